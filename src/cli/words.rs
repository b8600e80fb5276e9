//! The words of the handouts, in the languages of the lessons of a run.

use super::disk::read_templates;
use super::failure::Failure;
use crate::handout::Templates;
use crate::lesson::Language;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// The templates of each language once, with the files of a folder in place of the built-in
/// ones.
pub(super) struct Words {
    own: BTreeMap<String, String>,
    known: BTreeMap<Language, Arc<Templates>>,
}

impl Words {
    /// With the files of a folder of the user's own, if there is one.
    pub(super) fn with(folder: Option<&Path>) -> Result<Self, Failure> {
        let own = folder.map(read_templates).transpose()?.unwrap_or_default();
        Ok(Self { own, known: BTreeMap::new() })
    }

    /// The templates of a language.
    pub(super) fn of(&mut self, language: Language) -> Result<Arc<Templates>, Failure> {
        if let Some(known) = self.known.get(&language) {
            return Ok(Arc::clone(known));
        }
        let templates = Arc::new(Templates::new(language, &self.own)?);
        self.known.insert(language, Arc::clone(&templates));
        Ok(templates)
    }
}
