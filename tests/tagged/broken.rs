//! A file opened to put a fault into it.

use lopdf::content::{Content, Operation};
use lopdf::{Dictionary, Document, Object, ObjectId};

/// The objects of a file.
pub struct Broken(Document);

impl Broken {
    pub fn open(bytes: &[u8]) -> Self {
        Self(Document::load_mem(bytes).unwrap())
    }

    pub fn bytes(mut self) -> Vec<u8> {
        let mut bytes = Vec::new();
        self.0.save_to(&mut bytes).unwrap();
        bytes
    }

    pub fn catalog(&mut self) -> &mut Dictionary {
        self.0.catalog_mut().unwrap()
    }

    /// Every dictionary that has a key.
    fn with<'f>(&'f mut self, key: &'static str) -> impl Iterator<Item = &'f mut Dictionary> {
        let dicts = self.0.objects.values_mut().filter_map(|object| object.as_dict_mut().ok());
        dicts.filter(move |dict| dict.has(key.as_bytes()))
    }

    /// The structure elements of a type, in the order of the document.
    pub fn elements<'f>(
        &'f mut self,
        kind: &'static str,
    ) -> impl Iterator<Item = &'f mut Dictionary> {
        let of_kind = move |dict: &Dictionary| {
            dict.get(b"S").and_then(Object::as_name).is_ok_and(|name| name == kind.as_bytes())
        };
        self.with("P").filter(move |dict| of_kind(dict))
    }

    pub fn element(&mut self, kind: &'static str) -> &mut Dictionary {
        self.elements(kind).next().unwrap()
    }

    /// The first element of a type with that many kids at least.
    pub fn kids(&mut self, kind: &'static str, least: usize) -> &mut Vec<Object> {
        let kids = |dict: &'_ Dictionary| dict.get(b"K").and_then(Object::as_array).map(Vec::len);
        let mut elements = self.elements(kind);
        let parent = elements.find(|dict| kids(dict).is_ok_and(|count| count >= least)).unwrap();
        parent.get_mut(b"K").unwrap().as_array_mut().unwrap()
    }

    /// Half of the rows of the first table in a table of its own.
    pub fn split_table(&mut self) {
        let kids = self.kids("Table", 6);
        let half = kids.split_off(kids.len() / 2);
        let rows: Vec<ObjectId> = half.iter().map(|row| row.as_reference().unwrap()).collect();
        let mut table = self.element("Table").clone();
        table.set("K", half);
        let table = self.0.add_object(table);
        for row in rows {
            self.0.get_dictionary_mut(row).unwrap().set("P", table);
        }
        let kids = self.kids("Document", 2);
        kids.push(table.into());
    }

    /// The first field.
    pub fn field(&mut self) -> &mut Dictionary {
        self.with("FT").next().unwrap()
    }

    /// Keys and entries of the parent tree, by turns.
    pub fn parents(&mut self) -> &mut Vec<Object> {
        let tree = self.with("Nums").next().unwrap();
        tree.get_mut(b"Nums").unwrap().as_array_mut().unwrap()
    }

    /// The widths of a face: numbers of glyphs and runs of widths, by turns.
    pub fn widths(&mut self) -> &mut Vec<Object> {
        let font = self.with("DescendantFonts").next().unwrap();
        let fonts = font.get_mut(b"DescendantFonts").and_then(Object::as_array_mut).unwrap();
        fonts[0].as_dict_mut().unwrap().get_mut(b"W").unwrap().as_array_mut().unwrap()
    }

    /// The first glyph of a face says that its text is not known.
    pub fn forget_text(&mut self) {
        let font = self.with("ToUnicode").next().unwrap();
        let map = font.get(b"ToUnicode").and_then(Object::as_reference).unwrap();
        let map = self.0.get_object_mut(map).and_then(Object::as_stream_mut).unwrap();
        let text = String::from_utf8(map.decompressed_content().unwrap()).unwrap();
        let (head, pairs) = text.split_once("beginbfchar").unwrap();
        let pair: Vec<&str> = pairs.splitn(5, ['<', '>']).collect();
        let text = format!("{head}beginbfchar<{}><FFFD>{}", pair[1], pair[4]);
        map.set_plain_content(text.into_bytes());
    }

    pub fn page(&mut self, index: usize) -> &mut Dictionary {
        let page = self.0.get_pages().into_values().nth(index).unwrap();
        self.0.get_dictionary_mut(page).unwrap()
    }

    /// Changes the operations that draw the first page.
    pub fn drawing(&mut self, change: impl FnOnce(&mut Vec<Operation>)) {
        let page = self.0.get_pages().into_values().next().unwrap();
        let mut content = Content::decode(&self.0.get_page_content(page)).unwrap();
        change(&mut content.operations);
        self.0.change_page_content(page, content.encode().unwrap()).unwrap();
    }

    /// Replaces a text of the metadata.
    pub fn metadata(&mut self, old: &str, new: &str) {
        let id = self.catalog().get(b"Metadata").and_then(Object::as_reference).unwrap();
        let stream = self.0.get_object_mut(id).and_then(Object::as_stream_mut).unwrap();
        let text = String::from_utf8(stream.content.clone()).unwrap();
        assert!(text.contains(old));
        stream.set_plain_content(text.replace(old, new).into_bytes());
    }
}
