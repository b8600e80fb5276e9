//! A structure element as bytes (ISO 32000-1, Table 323).

use lopdf::ObjectId;

use super::meta::text_string;
use super::object;

/// One element while it is written.
pub(super) struct Element {
    out: Vec<u8>,
    kids: Vec<u8>,
    count: usize,
}

impl Element {
    /// An element of a standard structure type.
    pub fn new(kind: &str, parent: ObjectId) -> Self {
        let mut out = Vec::with_capacity(96);
        out.extend(b"<</S");
        object::name(&mut out, kind.as_bytes());
        out.extend(b"/P ");
        object::reference(&mut out, parent);
        Self { out, kids: Vec::new(), count: 0 }
    }

    /// The page of the sequences that do not name one.
    pub fn page(&mut self, page: ObjectId) {
        self.out.extend(b"/Pg ");
        object::reference(&mut self.out, page);
    }

    /// An element within it.
    pub fn child(&mut self, id: ObjectId) {
        object::reference(self.kid(), id);
    }

    /// A marked sequence.
    pub fn sequence(&mut self, number: usize) {
        object::integer(self.kid(), number);
    }

    /// A marked sequence on another page.
    pub fn sequence_on(&mut self, page: ObjectId, number: usize) {
        self.on(page, "MCR", |kid| {
            kid.extend(b"/MCID ");
            object::integer(kid, number);
        });
    }

    /// An object on a page, such as a link.
    pub fn object_on(&mut self, page: ObjectId, id: ObjectId) {
        self.on(page, "OBJR", |kid| {
            kid.extend(b"/Obj ");
            object::reference(kid, id);
        });
    }

    /// A kid that names its page.
    fn on(&mut self, page: ObjectId, kind: &str, what: impl FnOnce(&mut Vec<u8>)) {
        let kid = self.kid();
        kid.extend(b"<</Type/");
        kid.extend(kind.as_bytes());
        kid.extend(b"/Pg ");
        object::reference(kid, page);
        what(kid);
        kid.extend(b">>");
    }

    /// A text about it, if there is one.
    pub fn text(&mut self, key: &str, text: Option<&str>) {
        if let Some(text) = text {
            object::name(&mut self.out, key.as_bytes());
            object::literal(&mut self.out, &text_string(text));
        }
    }

    /// Attributes: their owner, then keys and values.
    pub fn attributes(&mut self, attributes: &str) {
        self.out.extend(b"/A<</O/");
        self.out.extend(attributes.as_bytes());
        self.out.extend(b">>");
    }

    pub fn finish(mut self, out: &mut Vec<u8>) {
        out.append(&mut self.out);
        match self.count {
            0 => {}
            1 => {
                out.extend(b"/K ");
                out.append(&mut self.kids);
            }
            _ => {
                out.extend(b"/K[");
                out.append(&mut self.kids);
                out.push(b']');
            }
        }
        out.extend(b">>");
    }

    fn kid(&mut self) -> &mut Vec<u8> {
        if self.count > 0 {
            self.kids.push(b' ');
        }
        self.count += 1;
        &mut self.kids
    }
}
