//! What every lesson starts from, compiled in. The files lie in `lessons/defaults/`
//! and may be read, copied and overridden like any other data file.

/// Names as they appear in messages, and texts.
pub(super) const FILES: [(&str, &str); 11] = [
    ("built-in mixing.yaml", include_str!("../../lessons/defaults/mixing.yaml")),
    ("built-in reserve.yaml", include_str!("../../lessons/defaults/reserve.yaml")),
    ("built-in room.yaml", include_str!("../../lessons/defaults/room.yaml")),
    ("built-in washing.yaml", include_str!("../../lessons/defaults/washing.yaml")),
    ("built-in materials.yaml", include_str!("../../lessons/defaults/materials.yaml")),
    ("built-in mixes.yaml", include_str!("../../lessons/defaults/mixes.yaml")),
    ("built-in techniques.yaml", include_str!("../../lessons/defaults/techniques.yaml")),
    ("built-in finishes.yaml", include_str!("../../lessons/defaults/finishes.yaml")),
    ("built-in sizes.yaml", include_str!("../../lessons/defaults/sizes.yaml")),
    ("built-in supplies.yaml", include_str!("../../lessons/defaults/supplies.yaml")),
    ("built-in cautions.yaml", include_str!("../../lessons/defaults/cautions.yaml")),
];
