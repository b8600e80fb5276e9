//! Marked content: nothing is drawn outside of it, each sequence hangs from one element, and
//! the parent tree leads back to that element. Accessibility checkers look past the last.

use std::collections::BTreeMap;

use hayro_syntax::object::{Array, Dict, Number, ObjectIdentifier};

use super::handouts::Handout;
use super::{all_keep, ensure};
use crate::pdf_file::ReadFile;
use crate::pdf_tree::{Kid, parent_tree};

#[test]
fn everything_drawn_is_tagged_or_declared_decoration() {
    all_keep(|handout: &Handout| drawing(&handout.file));
}

#[test]
fn every_marked_sequence_has_one_element_and_the_parent_tree_leads_to_it() {
    all_keep(|handout: &Handout| parents(&handout.file));
}

/// Text is text and lines are lines: what is drawn belongs to a figure or is decoration.
pub fn drawing(file: &ReadFile) -> Result<(), String> {
    for (number, page) in file.pages.iter().enumerate() {
        ensure(page.unmarked.is_empty(), || {
            format!("page {number} draws {:?} outside of marked content", page.unmarked)
        })?;
        for sequence in &page.sequences {
            ensure(sequence.mcid.is_none() == (sequence.kind == "Artifact"), || {
                format!("page {number} has {} with number {:?}", sequence.kind, sequence.mcid)
            })?;
        }
    }
    for element in file.tree.all() {
        for (page, mcid) in element.sequences() {
            let Some(sequence) = file.sequence(page, mcid) else { continue };
            ensure(sequence.paints.is_empty() || element.kind == "Figure", || {
                format!("{} {mcid} of page {page:?} has lines in it", element.kind)
            })?;
            ensure(sequence.kind == element.kind, || {
                format!("{} on page {page:?} hangs from {}", sequence.kind, element.kind)
            })?;
        }
    }
    Ok(())
}

pub fn parents(file: &ReadFile) -> Result<(), String> {
    let tree = Owners::of(file)?;
    let parents = parent_tree(&file.pdf);
    let (mut keys, mut sequences) = (0, 0);
    for (number, (page, read)) in file.pdf.pages().iter().zip(&file.pages).enumerate() {
        let entries = entries(page.raw(), "StructParents", &parents)?;
        let mut drawn: Vec<i64> = read.sequences.iter().filter_map(|s| s.mcid).collect();
        drawn.sort_unstable();
        ensure(drawn.iter().copied().eq(0..entries.len() as i64), || {
            format!("page {number} draws {drawn:?}, the parent tree has {}", entries.len())
        })?;
        for (&mcid, entry) in drawn.iter().zip(entries) {
            let owner = tree.sequences.get(&(number, mcid));
            ensure(entry.is_some() && entry.as_ref() == owner, || {
                format!("{mcid} of page {number} hangs from {owner:?}, not from {entry:?}")
            })?;
        }
        sequences += drawn.len();
        keys += 1;
        let touched = page.raw().get::<Array<'_>>("Annots");
        for link in touched.iter().flat_map(|all| all.iter::<Dict<'_>>()) {
            let entry = self::entries(&link, "StructParent", &parents)?;
            let owner = link.obj_id().and_then(|id| tree.touched.get(&id));
            ensure(owner.is_some() && *entry == [owner.copied()], || {
                format!("a link or field of page {number} hangs from {owner:?}, not from {entry:?}")
            })?;
            keys += 1;
        }
    }
    ensure(sequences == tree.sequences.len(), || "tags of what is not drawn".to_owned())?;
    ensure(keys == parents.len(), || "keys of the parent tree without use".to_owned())
}

/// What the parent tree has for a page, a link or a field.
fn entries<'p>(
    dict: &Dict<'_>,
    key: &str,
    parents: &'p BTreeMap<i64, Vec<Option<ObjectIdentifier>>>,
) -> Result<&'p Vec<Option<ObjectIdentifier>>, String> {
    let number = dict.get::<Number>(key).ok_or_else(|| format!("no {key}"))?.as_i64();
    parents.get(&number).ok_or_else(|| format!("the parent tree has no {number}"))
}

/// The element that each marked sequence, by page and number, and each link or field hangs from.
#[derive(Default)]
struct Owners {
    sequences: BTreeMap<(usize, i64), ObjectIdentifier>,
    touched: BTreeMap<ObjectIdentifier, ObjectIdentifier>,
}

impl Owners {
    fn of(file: &ReadFile) -> Result<Self, String> {
        let mut owners = Self::default();
        for element in file.tree.all() {
            let id = element.id.ok_or("an element without a number")?;
            for kid in &element.kids {
                let before = match kid {
                    Kid::Sequence(page, mcid) => {
                        let page = page.ok_or("a tag of a page that is not there")?;
                        owners.sequences.insert((page, *mcid), id)
                    }
                    Kid::Annotation(touched) => {
                        let touched = touched.ok_or("a tag of a link that is not there")?;
                        let kind = file.touched.get(&touched).map(|it| it.kind.as_str());
                        let kinds = [(Some("Link"), "Link"), (Some("Widget"), "Form")];
                        ensure(kinds.contains(&(kind, &element.kind)), || {
                            format!("a {kind:?} hangs from {}", element.kind)
                        })?;
                        owners.touched.insert(touched, id)
                    }
                    Kid::Element(kid) => {
                        ensure(kid.parent == Some(id), || {
                            format!("a {} says that it hangs from another element", kid.kind)
                        })?;
                        None
                    }
                };
                ensure(before.is_none(), || format!("{kid:?} hangs from two elements"))?;
            }
        }
        Ok(owners)
    }
}
