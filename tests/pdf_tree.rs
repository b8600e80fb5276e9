//! The structure tree of a PDF and its way back, as a reader program sees them.

use std::collections::BTreeMap;

use hayro_syntax::Pdf;
use hayro_syntax::object::{Array, Dict, MaybeRef, Number, Object, ObjectIdentifier};

use crate::pdf_reader as reader;

/// An element of the structure tree.
#[derive(Debug, Clone, PartialEq)]
pub struct Element {
    /// Standard structure type, such as `P`.
    pub kind: String,
    pub id: Option<ObjectIdentifier>,
    /// What it says it hangs from.
    pub parent: Option<ObjectIdentifier>,
    pub alt: Option<String>,
    pub scope: Option<String>,
    pub numbering: Option<String>,
    pub kids: Vec<Kid>,
}

/// What hangs from an element.
#[derive(Debug, Clone, PartialEq)]
pub enum Kid {
    Element(Element),
    /// A marked sequence: index of its page, if there is such a page, and its number.
    Sequence(Option<usize>, i64),
    /// A link or a field.
    Annotation(Option<ObjectIdentifier>),
}

impl Element {
    /// Elements right below it.
    pub fn elements(&self) -> impl Iterator<Item = &Self> {
        self.kids.iter().filter_map(|kid| match kid {
            Kid::Element(element) => Some(element),
            _ => None,
        })
    }

    /// Marked sequences right below it.
    pub fn sequences(&self) -> impl Iterator<Item = (Option<usize>, i64)> {
        self.kids.iter().filter_map(|kid| match kid {
            Kid::Sequence(page, mcid) => Some((*page, *mcid)),
            _ => None,
        })
    }

    /// It and all elements below it, in reading order.
    pub fn all(&self) -> Vec<&Self> {
        std::iter::once(self).chain(self.elements().flat_map(Self::all)).collect()
    }

    /// The link or field that hangs from it.
    pub fn annotation(&self) -> Option<ObjectIdentifier> {
        self.kids.iter().find_map(|kid| match kid {
            Kid::Annotation(id) => *id,
            _ => None,
        })
    }

    /// All elements of a kind, in reading order.
    pub fn of_kind(&self, kind: &str) -> Vec<&Self> {
        self.all().into_iter().filter(|element| element.kind == kind).collect()
    }
}

fn root(pdf: &Pdf) -> Dict<'_> {
    reader::root(pdf).get::<Dict<'_>>("StructTreeRoot").expect("a structure tree")
}

/// The document element with all that hangs from it.
pub fn tree(pdf: &Pdf) -> Element {
    let pages: BTreeMap<ObjectIdentifier, usize> = pdf
        .pages()
        .iter()
        .enumerate()
        .filter_map(|(number, page)| Some((page.raw().obj_id()?, number)))
        .collect();
    element(&root(pdf).get::<Dict<'_>>("K").expect("a document"), &pages)
}

fn element(dict: &Dict<'_>, pages: &BTreeMap<ObjectIdentifier, usize>) -> Element {
    let attributes = dict.get::<Dict<'_>>("A");
    let attribute = |key| attributes.as_ref().and_then(|dict| reader::name(dict, key));
    let page =
        |dict: &Dict<'_>| reader::reference(dict, "Pg").and_then(|page| pages.get(&page).copied());
    let kids = match dict.get::<Object<'_>>("K") {
        None => Vec::new(),
        Some(Object::Array(array)) => array.iter::<Object<'_>>().collect(),
        Some(one) => vec![one],
    };
    let kid = |kid| match kid {
        Object::Number(mcid) => Kid::Sequence(page(dict), mcid.as_i64()),
        Object::Dict(own) => match reader::name(&own, "Type").as_deref() {
            Some("MCR") => {
                Kid::Sequence(page(&own), own.get::<Number>("MCID").expect("an MCID").as_i64())
            }
            Some("OBJR") => Kid::Annotation(reader::reference(&own, "Obj")),
            _ => Kid::Element(element(&own, pages)),
        },
        other => panic!("{other:?} hangs from a tag"),
    };
    Element {
        kind: reader::name(dict, "S").expect("a structure type"),
        id: dict.obj_id(),
        parent: reader::reference(dict, "P"),
        alt: reader::texts(dict, "Alt"),
        scope: attribute("Scope"),
        numbering: attribute("ListNumbering"),
        kids: kids.into_iter().map(kid).collect(),
    }
}

/// The parent tree by its keys: the element of each marked sequence of a page, or the one
/// element of a link.
pub fn parent_tree(pdf: &Pdf) -> BTreeMap<i64, Vec<Option<ObjectIdentifier>>> {
    let parents = root(pdf).get::<Dict<'_>>("ParentTree").expect("a parent tree");
    let numbers = parents.get::<Array<'_>>("Nums").expect("its numbers");
    let id = |item: MaybeRef<Object<'_>>| match item {
        MaybeRef::Ref(reference) => Some(ObjectIdentifier::from(reference)),
        MaybeRef::NotRef(_) => None,
    };
    let mut tree = BTreeMap::new();
    let mut key = None;
    for item in numbers.raw_iter() {
        match (key.take(), item) {
            (None, MaybeRef::NotRef(Object::Number(number))) => key = Some(number.as_i64()),
            (Some(at), MaybeRef::NotRef(Object::Array(array))) => {
                tree.insert(at, array.raw_iter().map(id).collect());
            }
            (Some(at), MaybeRef::Ref(reference)) => {
                tree.insert(at, vec![Some(ObjectIdentifier::from(reference))]);
            }
            (_, other) => panic!("{other:?} in the parent tree"),
        }
    }
    tree
}
