/// Whether a character only steers the setting of text and leaves no ink and no
/// room: soft hyphens, joiners, direction marks, variation selectors (the default
/// ignorable code points of the Unicode Standard that people meet in text).
pub(crate) const fn leaves_no_mark(c: char) -> bool {
    matches!(
        c,
        '\u{AD}'
            | '\u{34F}'
            | '\u{61C}'
            | '\u{180E}'
            | '\u{200B}'..='\u{200F}'
            | '\u{202A}'..='\u{202E}'
            | '\u{2060}'..='\u{206F}'
            | '\u{FE00}'..='\u{FE0F}'
            | '\u{FEFF}'
            | '\u{E0100}'..='\u{E01EF}'
    )
}
