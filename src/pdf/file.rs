//! The bytes of the file: compressed streams, objects gathered in object streams, a
//! cross-reference stream (ISO 32000-1, 7.5.7 and 7.5.8).

use lopdf::{Document, Object, Stream, StringFormat, dictionary};

use super::digest::digest;
use super::press::Press;
use super::written::Written;
use super::{PdfError, object};
use crate::crew;

/// Bytes of `/Filter/FlateDecode`.
const FILTER_ENTRY: usize = 19;

/// Streams that are worth a thread.
const STREAMS: usize = 4;

/// Where an object stands.
enum Place {
    At(usize),
    Within { stream: u32, index: usize },
}

/// Writes all objects, of the draft and those `written` already. The identifier is a
/// fingerprint of what is written before it.
pub(super) fn write(draft: Document, mut written: Written) -> Result<Vec<u8>, PdfError> {
    let mut next = draft.max_id + 1;
    let mut places: Vec<(u32, Place)> = Vec::with_capacity(next as usize + 8);
    let mut streams = Vec::new();
    for (id, object) in draft.objects {
        match object {
            Object::Stream(stream) => streams.push((id.0, stream)),
            object => written.object(id, &object),
        }
    }
    for (ids, gathered) in written.gathered() {
        let stream = next;
        let within = |(index, id)| (id, Place::Within { stream, index });
        places.extend(ids.into_iter().enumerate().map(within));
        streams.push((stream, gathered));
        next += 1;
    }
    drop(written);
    let press = |press: &mut Press, (id, stream)| Ok((id, compress(stream, press)?));
    let streams = crew::map(streams, STREAMS, Press::new, press);
    let streams: Vec<(u32, Stream)> = streams.into_iter().collect::<Result<_, PdfError>>()?;

    let size: usize = streams.iter().map(|(_, stream)| stream.content.len() + 150).sum();
    let mut out = Vec::with_capacity(size + 7 * next as usize);
    out.extend(b"%PDF-1.7\n%\xE2\xE3\xCF\xD3\n");
    for (id, stream) in streams {
        places.push((id, Place::At(out.len())));
        write_stream(&mut out, id, stream);
    }
    let fingerprint = digest(out.iter().copied()).to_be_bytes().to_vec();
    let fingerprint = Object::String(fingerprint, StringFormat::Hexadecimal);
    let start = out.len();
    places.push((next, Place::At(start)));
    let mut dict = dictionary! {
        "Type" => "XRef",
        "Size" => i64::from(next) + 1,
        "W" => vec![1.into(), 4.into(), 2.into()],
        "ID" => vec![fingerprint.clone(), fingerprint],
    };
    for key in ["Root", "Info"] {
        let value = draft.trailer.get(key.as_bytes()).cloned();
        dict.set(key, value.map_err(|_| PdfError::Structure("a trailer"))?);
    }
    let entries = Stream::new(dict, cross_references(&mut places, next)?);
    let entries = compress(entries, &mut Press::new())?;
    write_stream(&mut out, next, entries);
    out.extend(format!("startxref\n{start}\n%%EOF\n").into_bytes());
    Ok(out)
}

/// The table of places: kind, offset or stream, generation or index.
fn cross_references(places: &mut [(u32, Place)], last: u32) -> Result<Vec<u8>, PdfError> {
    places.sort_unstable_by_key(|&(id, _)| id);
    let mut places = places.iter().peekable();
    let mut bytes = Vec::with_capacity((last as usize + 1) * 7);
    for id in 0..=last {
        let (kind, first, second) = match places.next_if(|&&(place, _)| place == id) {
            Some((_, Place::At(offset))) => (1, u32::try_from(*offset).map_err(failed)?, 0),
            Some((_, Place::Within { stream, index })) => {
                (2, *stream, u16::try_from(*index).map_err(failed)?)
            }
            None => (0, 0, u16::MAX),
        };
        bytes.push(kind);
        bytes.extend(first.to_be_bytes());
        bytes.extend(second.to_be_bytes());
    }
    Ok(bytes)
}

/// Deflates what is not deflated yet, unless that would make it longer.
fn compress(mut stream: Stream, press: &mut Press) -> Result<Stream, PdfError> {
    if !stream.allows_compression || stream.dict.has(b"Filter") {
        return Ok(stream);
    }
    let deflated = press.deflate(&stream.content)?;
    if deflated.len() + FILTER_ENTRY < stream.content.len() {
        stream.dict.set("Filter", "FlateDecode");
        stream.set_content(deflated);
    }
    Ok(stream)
}

fn write_stream(out: &mut Vec<u8>, id: u32, stream: Stream) {
    out.extend(format!("{id} 0 obj\n").into_bytes());
    object::write(out, &Object::Stream(stream));
    out.extend(b"\nendobj\n");
}

fn failed(reason: impl std::fmt::Display) -> PdfError {
    PdfError::Bytes(reason.to_string())
}
