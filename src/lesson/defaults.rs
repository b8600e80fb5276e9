//! What every lesson starts from, compiled in. The files lie in `lessons/defaults/`
//! and may be read, copied and overridden like any other data file. What has names or
//! sentences in it is there once for each language.

use super::model::Language;

/// A file's name as it appears in messages, and its text.
type File = (&'static str, &'static str);

/// A file of figures, in no language.
macro_rules! figures {
    ($name:literal) => {
        (concat!("built-in ", $name), include_str!(concat!("../../lessons/defaults/", $name)))
    };
}

/// The files of a language, by the name of its folder.
macro_rules! named {
    ($folder:literal) => {
        [
            named!($folder, "materials.yaml"),
            named!($folder, "mixes.yaml"),
            named!($folder, "techniques.yaml"),
            named!($folder, "finishes.yaml"),
            named!($folder, "supplies.yaml"),
            named!($folder, "washing.yaml"),
            named!($folder, "cautions.yaml"),
        ]
    };
    ($folder:literal, $name:literal) => {
        (
            concat!("built-in ", $folder, "/", $name),
            include_str!(concat!("../../lessons/defaults/", $folder, "/", $name)),
        )
    };
}

const FIGURES: [File; 4] = [
    figures!("mixing.yaml"),
    figures!("reserve.yaml"),
    figures!("room.yaml"),
    figures!("sizes.yaml"),
];
const ENGLISH: [File; 7] = named!("en");
const SPANISH: [File; 7] = named!("es");

/// What a lesson in this language starts from. Where nobody knows which language is meant,
/// a name may be one of any.
pub(super) fn files(language: Option<Language>) -> impl Iterator<Item = File> {
    let named =
        Language::ALL.into_iter().filter(move |known| language.is_none_or(|it| it == *known));
    FIGURES.into_iter().chain(named.flat_map(|language| match language {
        Language::English => ENGLISH,
        Language::Spanish => SPANISH,
    }))
}
