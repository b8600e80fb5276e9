//! A PDF as a reader program sees it, through a library that did not write it.

use std::collections::BTreeMap;

use hayro_syntax::Pdf;
use hayro_syntax::object::{Array, Dict, MaybeRef, Name, Number, Object, ObjectIdentifier, Stream};

/// Of a glyph that `/W` leaves out (ISO 32000-1, Table 117, DW), in thousandths of an em.
const DEFAULT_WIDTH: f32 = 1000.0;

/// A font that a page names.
pub struct ReadFont {
    pub base: String,
    pub widths: BTreeMap<u16, f32>,
    pub to_unicode: BTreeMap<u16, String>,
    pub program: Vec<u8>,
}

/// A glyph where a reader puts it, in points from the bottom left.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadGlyph {
    pub font: String,
    pub code: u16,
    /// What it stands for; in a group that stands for one text the last glyph has it.
    pub text: String,
    pub size: f32,
    pub x: f32,
    pub y: f32,
    pub end: f32,
}

/// A marked sequence: the outermost marks, in stream order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sequence {
    pub kind: String,
    pub mcid: Option<i64>,
    pub text: String,
    pub glyphs: Vec<ReadGlyph>,
    /// Corners of all paths.
    pub points: Vec<(f32, f32)>,
    /// Paint operators, in order.
    pub paints: Vec<String>,
}

/// A page.
pub struct ReadPage {
    pub size: (f32, f32),
    pub sequences: Vec<Sequence>,
    /// Operators outside any marked sequence that leave ink.
    pub unmarked: Vec<String>,
}

pub fn open(bytes: &[u8]) -> Pdf {
    Pdf::new(bytes.to_vec()).expect("a PDF that can be read")
}

pub fn root(pdf: &Pdf) -> Dict<'_> {
    pdf.xref().get(pdf.xref().root_id()).expect("a catalog")
}

pub fn texts(dict: &Dict<'_>, key: &str) -> Option<String> {
    dict.get::<hayro_syntax::object::String<'_>>(key).map(|s| decode(s.as_bytes()))
}

pub fn name(dict: &Dict<'_>, key: &str) -> Option<String> {
    dict.get::<Name<'_>>(key).map(|name| name.as_str().to_owned())
}

/// A text string, PDFDocEncoding (its ASCII part) or UTF-16.
pub fn decode(bytes: &[u8]) -> String {
    match bytes {
        [0xFE, 0xFF, rest @ ..] => utf16(rest),
        _ => bytes.iter().map(|&b| char::from(b)).collect(),
    }
}

fn utf16(bytes: &[u8]) -> String {
    let units: Vec<u16> = bytes.chunks(2).map(|c| u16::from_be_bytes([c[0], c[1]])).collect();
    String::from_utf16(&units).expect("UTF-16")
}

/// The object that an entry refers to.
pub fn reference(dict: &Dict<'_>, key: &str) -> Option<ObjectIdentifier> {
    dict.get_ref(key).map(ObjectIdentifier::from)
}

pub fn references(array: &Array<'_>) -> Vec<ObjectIdentifier> {
    array
        .raw_iter()
        .filter_map(|item| match item {
            MaybeRef::Ref(r) => Some(ObjectIdentifier::from(r)),
            MaybeRef::NotRef(_) => None,
        })
        .collect()
}

/// The fonts that the first page names.
pub fn fonts(pdf: &Pdf) -> BTreeMap<String, ReadFont> {
    let page = &pdf.pages()[0];
    let named = page.raw().get::<Dict<'_>>("Resources").expect("resources");
    let named = named.get::<Dict<'_>>("Font").expect("fonts");
    named
        .keys()
        .map(|key| {
            let font = named.get::<Dict<'_>>(&*key).expect("a font");
            (key.as_str().to_owned(), read_font(&font))
        })
        .collect()
}

fn read_font(font: &Dict<'_>) -> ReadFont {
    assert_eq!(name(font, "Subtype").as_deref(), Some("Type0"));
    assert_eq!(name(font, "Encoding").as_deref(), Some("Identity-H"));
    let descendants = font.get::<Array<'_>>("DescendantFonts").expect("descendants");
    let descendant = descendants.iter::<Dict<'_>>().next().expect("a descendant");
    assert_eq!(name(&descendant, "CIDToGIDMap").as_deref(), Some("Identity"));
    let descriptor = descendant.get::<Dict<'_>>("FontDescriptor").expect("a descriptor");
    let base = name(font, "BaseFont").expect("a name");
    assert_eq!(name(&descendant, "BaseFont").as_ref(), Some(&base));
    assert_eq!(name(&descriptor, "FontName").as_ref(), Some(&base));
    let program = descriptor.get::<Stream<'_>>("FontFile2").expect("an embedded program");

    let mut widths = BTreeMap::new();
    let mut first = 0_u16;
    for item in descendant.get::<Array<'_>>("W").expect("widths").iter::<Object<'_>>() {
        match item {
            Object::Number(code) => first = code.as_i64() as u16,
            Object::Array(run) => {
                for (code, width) in (first..).zip(run.iter::<Number>()) {
                    widths.insert(code, width.as_f32());
                }
            }
            other => panic!("{other:?} among widths"),
        }
    }
    let map = font.get::<Stream<'_>>("ToUnicode").expect("a map to Unicode");
    ReadFont {
        base,
        widths,
        to_unicode: unicode_map(&map.decoded().expect("a readable map")),
        program: program.decoded().expect("a readable program").into_owned(),
    }
}

/// The pairs of all `bfchar` sections.
fn unicode_map(stream: &[u8]) -> BTreeMap<u16, String> {
    let text = String::from_utf8_lossy(stream);
    assert!(!text.contains("beginbfrange"), "a kind of entry this reader does not know");
    let mut map = BTreeMap::new();
    for section in text.split("beginbfchar").skip(1) {
        let section = section.split("endbfchar").next().unwrap_or_default();
        let hex: Vec<&str> = section.split(['<', '>']).skip(1).step_by(2).collect();
        for pair in hex.chunks(2) {
            let bytes: Vec<u8> = (0..pair[1].len() / 2)
                .map(|i| u8::from_str_radix(&pair[1][2 * i..2 * i + 2], 16).expect("hex"))
                .collect();
            map.insert(u16::from_str_radix(pair[0], 16).expect("hex"), utf16(&bytes));
        }
    }
    map
}

/// Reads a page as a viewer does: text by `/W` and the map to Unicode.
pub fn page(pdf: &Pdf, number: usize, fonts: &BTreeMap<String, ReadFont>) -> ReadPage {
    let page = &pdf.pages()[number];
    let media = page.media_box();
    let mut reading = Reading::new(fonts);
    let mut operations = page.operations();
    while let Some(instruction) = operations.next() {
        let operator = String::from_utf8_lossy(instruction.operator).into_owned();
        let operands: Vec<Object<'_>> = instruction.operands().cloned().collect();
        reading.step(&operator, &operands);
    }
    assert!(reading.open.is_empty(), "a marked sequence is left open");
    assert!(!reading.in_text, "a text section is left open");
    ReadPage {
        size: ((media.x1 - media.x0) as f32, (media.y1 - media.y0) as f32),
        sequences: reading.done,
        unmarked: reading.unmarked,
    }
}

struct Reading<'f> {
    fonts: &'f BTreeMap<String, ReadFont>,
    font: String,
    size: f32,
    line: (f32, f32),
    x: f32,
    in_text: bool,
    /// Replacement text of each open sequence; the first sequence is the outermost.
    open: Vec<Option<String>>,
    current: Sequence,
    done: Vec<Sequence>,
    unmarked: Vec<String>,
}

impl<'f> Reading<'f> {
    fn new(fonts: &'f BTreeMap<String, ReadFont>) -> Self {
        Self {
            fonts,
            font: String::new(),
            size: 0.0,
            line: (0.0, 0.0),
            x: 0.0,
            in_text: false,
            open: Vec::new(),
            current: Sequence::default(),
            done: Vec::new(),
            unmarked: Vec::new(),
        }
    }

    fn step(&mut self, operator: &str, operands: &[Object<'_>]) {
        let numbers: Vec<f32> = operands.iter().filter_map(number).collect();
        match operator {
            "BT" => {
                assert!(!std::mem::replace(&mut self.in_text, true), "text within text");
                self.line = (0.0, 0.0);
            }
            "ET" => self.in_text = false,
            "Tf" => {
                let Some(Object::Name(name)) = operands.first() else {
                    panic!("Tf without a name")
                };
                self.font = name.as_str().to_owned();
                self.size = numbers[0];
            }
            "Td" => {
                assert!(self.in_text);
                self.line = (self.line.0 + numbers[0], self.line.1 + numbers[1]);
                self.x = self.line.0;
            }
            "TJ" => {
                let Some(Object::Array(items)) = operands.first() else { panic!("TJ of nothing") };
                for item in items.iter::<Object<'_>>() {
                    self.show(&item);
                }
                self.ink(operator);
            }
            "Tj" => {
                self.show(&operands[0]);
                self.ink(operator);
            }
            "BMC" | "BDC" => self.mark(operands),
            "EMC" => {
                let replacement = self.open.pop().expect("an open sequence").unwrap_or_default();
                self.current.text += &replacement;
                if let Some(last) = self.current.glyphs.last_mut() {
                    last.text += &replacement;
                }
                if self.open.is_empty() {
                    self.done.push(std::mem::take(&mut self.current));
                }
            }
            "m" | "l" | "c" => {
                self.current.points.extend(numbers.chunks(2).map(|p| (p[0], p[1])));
            }
            "re" => {
                let (x, y, w, h) = (numbers[0], numbers[1], numbers[2], numbers[3]);
                self.current.points.extend([(x, y), (x + w, y + h)]);
            }
            "S" | "s" | "f" | "f*" | "B" | "b" => self.ink(operator),
            "rg" | "RG" | "g" | "G" | "w" | "d" | "J" | "h" | "Ts" => {}
            other => panic!("operator {other} is not expected"),
        }
    }

    fn mark(&mut self, operands: &[Object<'_>]) {
        let properties = match operands.get(1) {
            Some(Object::Dict(dict)) => dict.clone(),
            _ => Dict::empty(),
        };
        if self.open.is_empty() {
            let Some(Object::Name(kind)) = operands.first() else { panic!("a mark has no name") };
            self.current = Sequence {
                kind: kind.as_str().to_owned(),
                mcid: properties.get::<Number>("MCID").map(|n| n.as_i64()),
                ..Sequence::default()
            };
        } else {
            assert_eq!(properties.get::<Number>("MCID"), None, "a sequence within a sequence");
        }
        self.open.push(texts(&properties, "ActualText"));
    }

    fn ink(&mut self, operator: &str) {
        if self.open.is_empty() {
            self.unmarked.push(operator.to_owned());
        }
        if operator != "TJ" && operator != "Tj" {
            self.current.paints.push(operator.to_owned());
        }
    }

    fn show(&mut self, item: &Object<'_>) {
        if let Some(offset) = number(item) {
            self.x -= offset / 1000.0 * self.size;
            return;
        }
        let Object::String(codes) = item else { panic!("{item:?} among text") };
        let font = &self.fonts[&self.font];
        for code in codes.as_bytes().chunks(2) {
            let code = u16::from_be_bytes([code[0], code[1]]);
            let width = font.widths.get(&code).copied().unwrap_or(DEFAULT_WIDTH);
            let end = self.x + width / 1000.0 * self.size;
            let replaced = self.open.iter().any(Option::is_some);
            let text = if replaced { "" } else { &font.to_unicode[&code] };
            self.current.text += text;
            self.current.glyphs.push(ReadGlyph {
                font: self.font.clone(),
                code,
                text: text.to_owned(),
                size: self.size,
                x: self.x,
                y: self.line.1,
                end,
            });
            self.x = end;
        }
    }
}

fn number(object: &Object<'_>) -> Option<f32> {
    match object {
        Object::Number(number) => Some(number.as_f32()),
        _ => None,
    }
}
