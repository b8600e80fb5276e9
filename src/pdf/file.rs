//! The bytes of the file: compressed streams, objects gathered in object streams, a
//! cross-reference stream (ISO 32000-1, 7.5.7 and 7.5.8).

use flate2::Compression;
use flate2::write::ZlibEncoder;
use lopdf::{Document, Object, Stream, StringFormat, dictionary};
use std::io::Write;

use super::digest::digest;
use super::{PdfError, object, parallel};

/// How hard the compressor tries. The best it can takes twice the time of this for one
/// or two per cent of size.
const EFFORT: Compression = Compression::new(6);

/// Bytes of `/Filter/FlateDecode`.
const FILTER_ENTRY: usize = 19;

/// Objects that are gathered in one stream; more compress better, fewer open sooner.
const GATHERED: usize = 250;

/// Where an object stands.
enum Place {
    At(usize),
    Within { stream: u32, index: usize },
}

/// Writes all objects. The identifier is a fingerprint of what is written before it.
pub(super) fn write(draft: Document) -> Result<Vec<u8>, PdfError> {
    let mut next = draft.max_id + 1;
    let mut places: Vec<(u32, Place)> = Vec::with_capacity(draft.objects.len() + 8);
    let mut streams = Vec::new();
    let mut plain = Vec::with_capacity(draft.objects.len());
    for ((id, _), object) in draft.objects {
        match object {
            Object::Stream(stream) => streams.push((id, stream)),
            object => plain.push((id, object)),
        }
    }
    for chunk in plain.chunks(GATHERED) {
        let stream = next;
        let within =
            |(index, &(id, _)): (usize, &(u32, Object))| (id, Place::Within { stream, index });
        places.extend(chunk.iter().enumerate().map(within));
        streams.push((stream, gather(chunk)?));
        next += 1;
    }
    parallel::each(&mut streams, |(_, stream)| compress(stream))?;

    let size: usize = streams.iter().map(|(_, stream)| stream.content.len() + 150).sum();
    let mut out = Vec::with_capacity(size + 7 * next as usize);
    out.extend(b"%PDF-1.7\n%\xE2\xE3\xCF\xD3\n");
    for (id, stream) in streams {
        places.push((id, Place::At(out.len())));
        write_stream(&mut out, id, stream)?;
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
    let mut entries = Stream::new(dict, cross_references(&mut places, next)?);
    compress(&mut entries)?;
    write_stream(&mut out, next, entries)?;
    out.extend(format!("startxref\n{start}\n%%EOF\n").into_bytes());
    Ok(out)
}

/// Many objects in one stream.
fn gather(objects: &[(u32, Object)]) -> Result<Stream, PdfError> {
    let mut head = Vec::new();
    let mut body = Vec::new();
    for (id, gathered) in objects {
        head.extend(format!("{id} {} ", body.len()).into_bytes());
        object::write(&mut body, gathered).map_err(failed)?;
        body.push(b' ');
    }
    let dict = dictionary! {
        "Type" => "ObjStm", "N" => objects.len() as i64, "First" => head.len() as i64,
    };
    head.append(&mut body);
    Ok(Stream::new(dict, head))
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
fn compress(stream: &mut Stream) -> Result<(), PdfError> {
    if !stream.allows_compression || stream.dict.has(b"Filter") {
        return Ok(());
    }
    let mut encoder = ZlibEncoder::new(Vec::with_capacity(stream.content.len() / 2), EFFORT);
    encoder.write_all(&stream.content).map_err(failed)?;
    let deflated = encoder.finish().map_err(failed)?;
    if deflated.len() + FILTER_ENTRY < stream.content.len() {
        stream.dict.set("Filter", "FlateDecode");
        stream.set_content(deflated);
    }
    Ok(())
}

fn write_stream(out: &mut Vec<u8>, id: u32, stream: Stream) -> Result<(), PdfError> {
    out.extend(format!("{id} 0 obj\n").into_bytes());
    object::write(out, &Object::Stream(stream)).map_err(failed)?;
    out.extend(b"\nendobj\n");
    Ok(())
}

fn failed(reason: impl std::fmt::Display) -> PdfError {
    PdfError::Bytes(reason.to_string())
}
