//! Objects as bytes (ISO 32000-1, 7.3).

use std::io::{self, Write};

use lopdf::{Dictionary, Object, StringFormat};

/// Writes an object that is not a stream.
pub(super) fn write(out: &mut Vec<u8>, object: &Object) -> io::Result<()> {
    match object {
        Object::Null => out.extend(b"null"),
        Object::Boolean(true) => out.extend(b"true"),
        Object::Boolean(false) => out.extend(b"false"),
        Object::Integer(value) => write!(out, "{value}")?,
        Object::Real(value) => write!(out, "{value}")?,
        Object::Reference((id, generation)) => write!(out, "{id} {generation} R")?,
        Object::Name(name) => write_name(out, name)?,
        Object::String(text, StringFormat::Literal) => literal(out, text),
        Object::String(text, StringFormat::Hexadecimal) => {
            out.push(b'<');
            for byte in text {
                write!(out, "{byte:02X}")?;
            }
            out.push(b'>');
        }
        Object::Array(items) => {
            out.push(b'[');
            for (index, item) in items.iter().enumerate() {
                if index > 0 {
                    space(out, item);
                }
                write(out, item)?;
            }
            out.push(b']');
        }
        Object::Dictionary(dict) => dictionary(out, dict)?,
        Object::Stream(stream) => {
            dictionary(out, &stream.dict)?;
            out.extend(b"stream\n");
            out.extend(&stream.content);
            out.extend(b"\nendstream");
        }
    }
    Ok(())
}

fn dictionary(out: &mut Vec<u8>, dict: &Dictionary) -> io::Result<()> {
    out.extend(b"<<");
    for (key, value) in dict {
        write_name(out, key)?;
        space(out, value);
        write(out, value)?;
    }
    out.extend(b">>");
    Ok(())
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

fn write_name(out: &mut Vec<u8>, name: &[u8]) -> io::Result<()> {
    out.push(b'/');
    for &byte in name {
        if byte.is_ascii_graphic() && !b"()<>[]{}/%#".contains(&byte) {
            out.push(byte);
        } else {
            write!(out, "#{byte:02X}")?;
        }
    }
    Ok(())
}

fn literal(out: &mut Vec<u8>, text: &[u8]) {
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
