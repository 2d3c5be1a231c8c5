//! The manifest of a folder: what the tool made there, each file with its checksum.
//!
//! Its lines are those of `sha256sum`, so that `sha256sum --check` holds the folder to it; before the files of a design
//! stands a remark with its name and the checksum of what they were made from.

/// What begins every manifest.
const HEAD: &str = "# Roundelay made these files. One that has another checksum by now is never replaced.";

/// What begins the remark before the files of a design.
const OF: &str = "# from ";

/// The files of one design.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Edition {
    pub(super) design: String,
    /// Checksum of all that went in.
    pub(super) inputs: String,
    /// Name and checksum.
    pub(super) files: Vec<(String, String)>,
}

/// A manifest.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Manifest {
    editions: Vec<Edition>,
}

impl Manifest {
    /// Reads a manifest; a line that is none of its own says nothing.
    pub(super) fn parse(bytes: &[u8]) -> Self {
        let mut editions: Vec<Edition> = Vec::new();
        for line in String::from_utf8_lossy(bytes).lines() {
            if let Some((inputs, design)) = line.strip_prefix(OF).and_then(|rest| rest.split_once(' ')) {
                let (design, inputs) = (design.to_owned(), inputs.to_owned());
                editions.push(Edition { design, inputs, files: Vec::new() });
            } else if let (Some(edition), Some((sum, name))) = (editions.last_mut(), line.split_once("  ")) {
                let plain = std::path::Path::new(name).file_name().is_some_and(|plain| plain == name);
                if plain && sum.len() == 64 {
                    edition.files.push((name.to_owned(), sum.to_owned()));
                }
            }
        }
        Self { editions }
    }

    /// Its bytes.
    pub(super) fn write(&self) -> Vec<u8> {
        let mut text = format!("{HEAD}\n");
        for Edition { design, inputs, files } in &self.editions {
            text += &format!("{OF}{inputs} {design}\n");
            text.extend(files.iter().map(|(name, sum)| format!("{sum}  {name}\n")));
        }
        text.into_bytes()
    }

    /// The files of a design.
    pub(super) fn edition(&self, design: &str) -> Option<&Edition> {
        self.editions.iter().find(|edition| edition.design == design)
    }

    /// True where a file of this name and checksum is one of the tool's.
    pub(super) fn made(&self, name: &str, sum: &str) -> bool {
        self.editions.iter().flat_map(|edition| &edition.files).any(|(own, of)| own == name && of == sum)
    }

    /// The same with the files of one design anew; the designs in the order of their names. A file belongs to the design
    /// that made it last.
    pub(super) fn with(&self, edition: Edition) -> Self {
        let mut editions: Vec<Edition> =
            self.editions.iter().filter(|old| old.design != edition.design).cloned().collect();
        for old in &mut editions {
            old.files.retain(|(name, _)| edition.files.iter().all(|(new, _)| new != name));
        }
        editions.retain(|old| !old.files.is_empty());
        editions.push(edition);
        editions.sort_by(|a, b| a.design.cmp(&b.design));
        Self { editions }
    }
}
