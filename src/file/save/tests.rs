//! The save room on the disk of this machine.

use std::fs;

use super::*;
use crate::file::seal::sealed;

fn output(name: &str, text: &str) -> Output {
    Output { name: name.to_owned(), bytes: text.as_bytes().to_vec() }
}

fn order<'a>(folder: &'a Path, outputs: &'a [Output]) -> Order<'a> {
    let source = Source { design: "hat", inputs: "first", whole: true, remove: false };
    Order { folder, outputs, force: false, source: Some(source) }
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

fn read(folder: &Path, name: &str) -> String {
    fs::read_to_string(folder.join(name)).unwrap()
}

#[test]
fn files_are_written_and_replaced() {
    let folder = tempfile::tempdir().unwrap();
    let inner = folder.path().join("new/deep");
    let saved = save(&order(&inner, &[output("a.txt", "one"), output("b.txt", "two")])).unwrap();
    assert_eq!(saved.paths, [inner.join("a.txt"), inner.join("b.txt")]);
    save(&order(&inner, &[output("a.txt", "three"), output("b.txt", "two")])).unwrap();
    assert_eq!(read(&inner, "a.txt"), "three");
    assert_eq!(names(&inner), [MANIFEST, "a.txt", "b.txt"]);
}

#[test]
fn where_one_fails_no_old_file_is_touched_and_nothing_is_left_behind() {
    let folder = tempfile::tempdir().unwrap();
    save(&order(folder.path(), &[output("a.txt", "old")])).unwrap();
    fs::create_dir(folder.path().join("b.txt")).unwrap();
    let told = save(&order(folder.path(), &[output("a.txt", "new"), output("b.txt", "new")])).unwrap_err().to_string();
    assert!(told.contains("b.txt can't be written: a folder has this name"), "{told}");
    assert_eq!(read(folder.path(), "a.txt"), "old");
    assert_eq!(names(folder.path()), [MANIFEST, "a.txt", "b.txt"]);
}

#[test]
fn what_the_tool_did_not_make_is_never_replaced_unless_told_to() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("a.txt"), "by hand").unwrap();
    fs::write(folder.path().join("b.txt"), "by hand too").unwrap();
    let outputs = [output("a.txt", "new"), output("b.txt", "new"), output("c.txt", "new")];
    let SaveError::Foreign(foreign) = save(&order(folder.path(), &outputs)).unwrap_err() else { panic!() };
    assert_eq!(foreign, [folder.path().join("a.txt"), folder.path().join("b.txt")]);
    assert_eq!(names(folder.path()), ["a.txt", "b.txt"]);
    save(&Order { force: true, ..order(folder.path(), &outputs) }).unwrap();
    assert_eq!(read(folder.path(), "a.txt"), "new");
}

#[test]
fn a_file_changed_by_hand_since_is_the_maker_s() {
    let folder = tempfile::tempdir().unwrap();
    save(&order(folder.path(), &[output("a.txt", "one")])).unwrap();
    fs::write(folder.path().join("a.txt"), "one, and a remark").unwrap();
    let refused = save(&order(folder.path(), &[output("a.txt", "two")]));
    assert!(matches!(refused, Err(SaveError::Foreign(_))));
    assert_eq!(read(folder.path(), "a.txt"), "one, and a remark");
}

#[test]
fn a_picture_with_a_seal_that_holds_is_the_tool_s() {
    let folder = tempfile::tempdir().unwrap();
    let picture = |text: &str| Output { name: "a.svg".to_owned(), bytes: sealed(format!("<?xml {text}").into_bytes()) };
    let draw = |text: &str| save(&Order { source: None, ..order(folder.path(), &[picture(text)]) });
    draw("one").unwrap();
    draw("two").unwrap();
    assert_eq!(names(folder.path()), ["a.svg"]);
    let edited = read(folder.path(), "a.svg").replace("two", "2");
    fs::write(folder.path().join("a.svg"), &edited).unwrap();
    assert!(matches!(draw("three"), Err(SaveError::Foreign(_))));
    assert_eq!(read(folder.path(), "a.svg"), edited);
}

#[test]
fn files_of_a_size_that_is_gone_are_named_and_removed_on_request() {
    let folder = tempfile::tempdir().unwrap();
    let all = [output("S.txt", "s"), output("M.txt", "m"), output("L.txt", "l")];
    save(&order(folder.path(), &all)).unwrap();
    fs::write(folder.path().join("L.txt"), "edited").unwrap();
    let saved = save(&order(folder.path(), &all[..1])).unwrap();
    assert_eq!(saved.outdated, [folder.path().join("M.txt")]);
    assert_eq!(names(folder.path()), [MANIFEST, "L.txt", "M.txt", "S.txt"]);
    let mut asked = order(folder.path(), &all[..1]);
    asked.source = asked.source.map(|source| Source { remove: true, ..source });
    let saved = save(&asked).unwrap();
    assert_eq!((saved.removed, saved.outdated), (vec![folder.path().join("M.txt")], Vec::new()));
    assert_eq!(names(folder.path()), [MANIFEST, "L.txt", "S.txt"]);
}

#[test]
fn a_part_of_the_products_makes_no_other_out_of_date() {
    let folder = tempfile::tempdir().unwrap();
    save(&order(folder.path(), &[output("a.txt", "a"), output("b.txt", "b")])).unwrap();
    let outputs = [output("a.txt", "new")];
    let mut part = order(folder.path(), &outputs);
    part.source = part.source.map(|source| Source { whole: false, remove: true, ..source });
    let saved = save(&part).unwrap();
    assert_eq!((saved.outdated, saved.removed), (Vec::new(), Vec::new()));
    save(&order(folder.path(), &[output("a.txt", "a"), output("b.txt", "c")])).unwrap();
    assert_eq!(read(folder.path(), "b.txt"), "c");
}

#[test]
fn files_are_known_as_unchanged_while_inputs_and_bytes_are_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let outputs = [output("a.txt", "one")];
    save(&order(folder.path(), &outputs)).unwrap();
    assert_eq!(unchanged(folder.path(), "hat", "first"), Some(vec![folder.path().join("a.txt")]));
    assert_eq!(unchanged(folder.path(), "hat", "second"), None);
    assert_eq!(unchanged(folder.path(), "cap", "first"), None);
    fs::write(folder.path().join("a.txt"), "two").unwrap();
    assert_eq!(unchanged(folder.path(), "hat", "first"), None);
    assert_eq!(unchanged(&folder.path().join("no"), "hat", "first"), None);
}

#[test]
fn two_designs_share_a_folder() {
    let folder = tempfile::tempdir().unwrap();
    for design in ["hat", "cap"] {
        let source = Source { design, inputs: "x", whole: true, remove: true };
        let outputs = [output(&format!("{design}.txt"), design)];
        let saved = save(&Order { source: Some(source), ..order(folder.path(), &outputs) }).unwrap();
        assert!(saved.removed.is_empty());
    }
    assert_eq!(names(folder.path()), [MANIFEST, "cap.txt", "hat.txt"]);
    assert!(unchanged(folder.path(), "hat", "x").is_some() && unchanged(folder.path(), "cap", "x").is_some());
}

#[test]
fn a_read_only_file_stays_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.txt");
    fs::write(&path, "old").unwrap();
    let mut rights = fs::metadata(&path).unwrap().permissions();
    rights.set_readonly(true);
    fs::set_permissions(&path, rights).unwrap();
    let outputs = [output("a.txt", "new")];
    let told = save(&Order { force: true, ..order(folder.path(), &outputs) }).unwrap_err().to_string();
    assert!(told.ends_with("it is read-only"), "{told}");
    assert_eq!(fs::read_to_string(&path).unwrap(), "old");
}

#[test]
fn a_file_in_place_of_a_folder_is_named() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("hat"), "old").unwrap();
    let told = save(&order(&folder.path().join("hat/deep"), &[output("a.txt", "new")])).unwrap_err().to_string();
    assert!(told.contains("hat"), "{told}");
    let told = save(&order(&folder.path().join("hat"), &[output("a.txt", "new")])).unwrap_err().to_string();
    assert!(told.ends_with("hat can't be written: it is a file and no folder"), "{told}");
}

#[test]
fn names_that_can_t_be_are_refused_before_anything_is_done() {
    let folder = tempfile::tempdir().unwrap();
    let long = "é".repeat(130);
    for name in ["../a.txt", "", ".", "a/b", "/a.txt", "a\nb", ".roundelay-manifest", &long] {
        let outputs = [output("a.txt", "x"), output(name, "x")];
        assert!(save(&order(&folder.path().join("in"), &outputs)).is_err(), "{name}");
    }
    assert!(names(folder.path()).is_empty());
}

#[test]
fn a_new_file_never_replaces_one() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("hat.yaml");
    save_new(&path, b"first").unwrap();
    let Err(SaveError::Failed { cause, .. }) = save_new(&path, b"second") else { panic!() };
    assert_eq!(cause.kind(), io::ErrorKind::AlreadyExists);
    assert_eq!(read(folder.path(), "hat.yaml"), "first");
    assert_eq!(names(folder.path()), ["hat.yaml"]);
}

#[test]
fn a_complaint_names_the_file_and_not_the_one_beside_it() {
    let folder = tempfile::tempdir().unwrap();
    let told = save_new(&folder.path().join("no/hat.yaml"), b"x").unwrap_err().to_string();
    assert!(told.contains("hat.yaml can't be written") && !told.contains(OWN), "{told}");
}

#[test]
fn a_manifest_is_read_as_it_was_written_and_says_no_other_folder() {
    let edition = |design: &str, name: &str| Edition {
        design: design.to_owned(),
        inputs: "abc".to_owned(),
        files: vec![(name.to_owned(), checksum(name.as_bytes()))],
    };
    let manifest = Manifest::default().with(edition("a hat", "a hat.txt")).with(edition("cap", "cap.txt"));
    assert_eq!(Manifest::parse(&manifest.write()), manifest);
    let sum = checksum(b"x");
    let odd = format!("# from x hat\n{sum}  ../hat.txt\nnonsense\n\u{0}\n{sum}  ok.txt\n");
    assert!(Manifest::parse(odd.as_bytes()).made("ok.txt", &sum));
    assert!(!Manifest::parse(odd.as_bytes()).made("../hat.txt", &sum));
}

/// Two runs into one folder: each finds the other's files whole, whichever comes first.
#[test]
fn two_runs_at_once_wait_for_each_other() {
    let folder = tempfile::tempdir().unwrap();
    let outputs = |text: &str| (0..5).map(|index| output(&format!("{index}.txt"), text)).collect::<Vec<_>>();
    std::thread::scope(|scope| {
        for text in ["one", "two"] {
            let (folder, outputs) = (folder.path(), outputs(text));
            scope.spawn(move || (0..20).for_each(|_| drop(save(&order(folder, &outputs)).unwrap())));
        }
    });
    let texts: Vec<String> = (0..5).map(|index| read(folder.path(), &format!("{index}.txt"))).collect();
    assert!(texts.iter().all(|text| *text == texts[0]), "{texts:?}");
    assert_eq!(names(folder.path()).len(), 6);
}

#[cfg(unix)]
#[test]
fn a_replaced_file_keeps_its_plain_rights_and_no_special_ones() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    save(&order(folder.path(), &[output("a.txt", "old")])).unwrap();
    let path = folder.path().join("a.txt");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o6640)).unwrap();
    save(&order(folder.path(), &[output("a.txt", "new")])).unwrap();
    assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o7777, 0o640);
}

#[cfg(unix)]
#[test]
fn a_link_is_not_followed_and_not_replaced() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("mine.txt"), "mine").unwrap();
    std::os::unix::fs::symlink("mine.txt", folder.path().join("a.txt")).unwrap();
    let outputs = [output("a.txt", "new")];
    let told = save(&Order { force: true, ..order(folder.path(), &outputs) }).unwrap_err().to_string();
    assert!(told.contains("a link or a device"), "{told}");
    assert_eq!(read(folder.path(), "mine.txt"), "mine");
}
