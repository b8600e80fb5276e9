//! Where one file is, seen from the folder of another.

use std::path::{Component, Path, PathBuf, absolute};

/// The way from a folder to a file, with slashes. It leads through the folders that both are
/// in by their names alone, so that a table and its lesson may be moved together; the file may
/// not be there yet. Where there is no way, as between two drives, it is the name of the file.
pub(super) fn way(folder: &Path, file: &Path) -> String {
    let name = || file.file_name().unwrap_or_default().to_string_lossy().into_owned();
    let (Ok(folder), Ok(file)) = (absolute(folder), absolute(file)) else { return name() };
    let (folder, file) = (plain(&folder), plain(&file));
    let common = folder.components().zip(file.components()).take_while(|(a, b)| a == b).count();
    if common == 0 {
        return name();
    }
    let up = folder.components().skip(common).map(|_| "..".to_owned());
    let down = file.components().skip(common);
    let down = down.map(|part| part.as_os_str().to_string_lossy().into_owned());
    up.chain(down).collect::<Vec<_>>().join("/")
}

/// Without the steps up.
fn plain(path: &Path) -> PathBuf {
    let mut plain = PathBuf::new();
    for part in path.components() {
        match part {
            Component::ParentDir => {
                plain.pop();
            }
            part => plain.push(part),
        }
    }
    plain
}

#[cfg(test)]
mod tests {
    use super::way;
    use std::path::Path;

    #[test]
    fn the_way_goes_up_as_far_as_it_must() {
        let of = |folder: &str, file: &str| way(Path::new(folder), Path::new(file));
        assert_eq!(of("handouts/evening", "lessons/evening.yaml"), "../../lessons/evening.yaml");
        assert_eq!(of("lessons/out/../out", "./lessons/evening.yaml"), "../evening.yaml");
        assert_eq!(of("lessons", "lessons/evening.yaml"), "evening.yaml");
        assert_eq!(of("/a/b", "/a/c/evening.yaml"), "../c/evening.yaml");
    }
}
