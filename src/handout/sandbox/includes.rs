//! No template stands in itself, nor in too many others.

use super::{Include, Refused, Texts};
use crate::handout::template_fault::TemplateFault;
use std::collections::BTreeMap;

/// Deepest includes in each other; ours need two.
const DEPTH: usize = 6;

/// Sees that includes come to an end.
pub(super) fn check(
    named: &[(&str, Vec<Include>)],
    texts: &Texts<'_>,
) -> Result<(), TemplateFault> {
    let mut chart = Chart {
        named: named.iter().map(|(name, of)| (*name, of)).collect(),
        seen: BTreeMap::new(),
    };
    for (name, includes) in named {
        let Err(through) = chart.height(name, &mut Vec::new()) else { continue };
        // Told where the way begins that does not end.
        let Some((other, span)) = includes.iter().find(|(other, _)| *other == through) else {
            continue;
        };
        let (message, help) = match *other == **name {
            true => ("this file stands in itself", "leave this line out"),
            false => (
                "files stand in each other without an end here, or more than 6 deep",
                "include files that include no others",
            ),
        };
        let text = texts.get(name).copied().unwrap_or_default();
        return Err(Refused::new(span.clone(), message, help).of(name, text));
    }
    Ok(())
}

struct Chart<'a> {
    named: BTreeMap<&'a str, &'a Vec<Include>>,
    /// How many files stand in each other below a file.
    seen: BTreeMap<String, usize>,
}

impl Chart<'_> {
    /// How many files stand in each other from this one on; or the first one included that
    /// leads too deep.
    fn height(&mut self, name: &str, above: &mut Vec<String>) -> Result<usize, String> {
        if let Some(height) = self.seen.get(name) {
            return Ok(*height);
        }
        above.push(name.to_owned());
        let mut height = 0;
        let includes = self.named.get(name).copied();
        for (other, _) in includes.into_iter().flatten() {
            let endless = above.contains(other) || above.len() > DEPTH;
            let below = if endless { Err(()) } else { self.height(other, above).map_err(drop) };
            match below {
                Ok(below) if below < DEPTH => height = height.max(below + 1),
                _ => return Err(other.clone()),
            }
        }
        above.pop();
        self.seen.insert(name.to_owned(), height);
        Ok(height)
    }
}
