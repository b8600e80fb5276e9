//! Objects as bytes, on their way into object streams (ISO 32000-1, 7.5.7).

use lopdf::{Object, ObjectId, Stream, dictionary};
use std::ops::Range;

use super::object;

/// Objects that are gathered in one stream; more compress better, fewer open sooner.
const GATHERED: usize = 250;

/// Objects in their final form.
#[derive(Default)]
pub(super) struct Written {
    bytes: Vec<u8>,
    objects: Vec<(u32, Range<usize>)>,
}

impl Written {
    /// Adds an object that is written by hand.
    pub fn add(&mut self, (id, _): ObjectId, write: impl FnOnce(&mut Vec<u8>)) {
        let start = self.bytes.len();
        write(&mut self.bytes);
        self.objects.push((id, start..self.bytes.len()));
    }

    /// Adds an object that is no stream.
    pub fn object(&mut self, id: ObjectId, object: &Object) {
        self.add(id, |out| object::write(out, object));
    }

    /// Streams of the objects, with the numbers of those in each.
    pub fn gathered(&self) -> impl Iterator<Item = (Vec<u32>, Stream)> {
        self.objects.chunks(GATHERED).map(|chunk| {
            let mut head = Vec::new();
            let mut body = Vec::new();
            for (id, range) in chunk {
                head.extend(format!("{id} {} ", body.len()).into_bytes());
                body.extend_from_slice(self.bytes.get(range.clone()).unwrap_or_default());
                body.push(b' ');
            }
            let dict = dictionary! {
                "Type" => "ObjStm", "N" => chunk.len() as i64, "First" => head.len() as i64,
            };
            head.append(&mut body);
            (chunk.iter().map(|&(id, _)| id).collect(), Stream::new(dict, head))
        })
    }
}
