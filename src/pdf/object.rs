//! Objects as bytes (ISO 32000-1, 7.3).

use lopdf::{Dictionary, Object, ObjectId, StringFormat};

/// Writes an object.
pub(super) fn write(out: &mut Vec<u8>, object: &Object) {
    match object {
        Object::Null => out.extend(b"null"),
        Object::Boolean(true) => out.extend(b"true"),
        Object::Boolean(false) => out.extend(b"false"),
        Object::Integer(value) => out.extend(value.to_string().into_bytes()),
        Object::Real(value) => out.extend(value.to_string().into_bytes()),
        Object::Reference(id) => reference(out, *id),
        Object::Name(own) => name(out, own),
        Object::String(text, StringFormat::Literal) => literal(out, text),
        Object::String(text, StringFormat::Hexadecimal) => {
            out.push(b'<');
            text.iter().for_each(|&byte| out.extend(hexadecimal(byte)));
            out.push(b'>');
        }
        Object::Array(items) => {
            out.push(b'[');
            for (index, item) in items.iter().enumerate() {
                if index > 0 {
                    space(out, item);
                }
                write(out, item);
            }
            out.push(b']');
        }
        Object::Dictionary(dict) => dictionary(out, dict),
        Object::Stream(stream) => {
            dictionary(out, &stream.dict);
            out.extend(b"stream\n");
            out.extend(&stream.content);
            out.extend(b"\nendstream");
        }
    }
}

fn dictionary(out: &mut Vec<u8>, dict: &Dictionary) {
    out.extend(b"<<");
    for (key, value) in dict {
        name(out, key);
        space(out, value);
        write(out, value);
    }
    out.extend(b">>");
}

/// A reference to another object.
pub(super) fn reference(out: &mut Vec<u8>, (id, generation): ObjectId) {
    integer(out, id as usize);
    out.push(b' ');
    integer(out, generation.into());
    out.extend(b" R");
}

/// A count.
pub(super) fn integer(out: &mut Vec<u8>, mut value: usize) {
    let start = out.len();
    loop {
        out.push(b'0' + (value % 10) as u8);
        value /= 10;
        if value == 0 {
            break;
        }
    }
    if let Some(digits) = out.get_mut(start..) {
        digits.reverse();
    }
}

fn hexadecimal(byte: u8) -> [u8; 2] {
    [byte >> 4, byte & 15].map(|half| match half {
        0..=9 => b'0' + half,
        _ => b'A' - 10 + half,
    })
}

/// A blank, where the object does not begin with a delimiter.
fn space(out: &mut Vec<u8>, next: &Object) {
    if matches!(
        next,
        Object::Null
            | Object::Boolean(_)
            | Object::Integer(_)
            | Object::Real(_)
            | Object::Reference(_)
    ) {
        out.push(b' ');
    }
}

/// A name (7.3.5).
pub(super) fn name(out: &mut Vec<u8>, name: &[u8]) {
    out.push(b'/');
    for &byte in name {
        if byte.is_ascii_graphic() && !b"()<>[]{}/%#".contains(&byte) {
            out.push(byte);
        } else {
            out.push(b'#');
            out.extend(hexadecimal(byte));
        }
    }
}

/// A string in parentheses (ISO 32000-1, 7.3.4.2).
pub(super) fn literal(out: &mut Vec<u8>, text: &[u8]) {
    out.push(b'(');
    for &byte in text {
        match byte {
            b'(' | b')' | b'\\' => out.extend([b'\\', byte]),
            b'\r' => out.extend(b"\\r"),
            b'\n' => out.extend(b"\\n"),
            _ => out.push(byte),
        }
    }
    out.push(b')');
}
