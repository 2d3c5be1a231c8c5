use super::*;

fn look_up(name: &str, row: &str) -> Result<HeadRow, String> {
    table(name).unwrap().row(row)
}

fn cm(table: &str, row: &str) -> f64 {
    look_up(table, row).unwrap().head.cm()
}

/// Daily values of the WHO head circumference standards (`hcanthro.txt`): day, boys' M and S, girls' M and S. With
/// L = 1 a percentile is M (1 + S z), z = ∓1.8808 for the 3rd and 97th.
#[test]
fn who_rows_follow_from_the_published_m_and_s() {
    let daily = [
        ("newborn", 34.4618, 0.03686, 33.8787, 0.03496),
        ("baby-12m", 46.0637, 0.02789, 44.894, 0.03027),
        ("child-2y", 48.2536, 0.02821, 47.1845, 0.02957),
        ("child-5y", 50.7372, 0.02945, 49.9225, 0.0285),
    ];
    for (row, boys_m, boys_s, girls_m, girls_s) in daily {
        for (sex, m, s) in [("boy", boys_m, boys_s), ("girl", girls_m, girls_s)] {
            for (percentile, z) in [("p3", -1.8808), ("p50", 0.0), ("p97", 1.8808)] {
                let row = format!("{row}-{sex}-{percentile}");
                let value: f64 = m * (1.0 + s * z);
                assert!((cm("who", &row) - value).abs() < 0.06, "{row}: {value}");
            }
        }
    }
}

/// UK 1990 growth reference (reanalysed 2009): boys' median 52.2 cm at 4 and 57.3 at 18 years.
#[test]
fn uk90_rows_by_name() {
    assert!((cm("uk90", "child-4y-boy") - 52.2).abs() < 1e-9);
    assert!((cm("uk90", "youth-18y-boy") - 57.3).abs() < 1e-9);
    assert!((cm("uk90", "child-8y") - 53.45).abs() < 1e-9);
}

/// ANSUR II public data files, 4 082 men and 1 986 women: P5 548 and P95 601 mm for men, median 560 for women.
#[test]
fn ansur_percentiles() {
    assert!((cm("ansur", "man-p5") - 54.8).abs() < 1e-9);
    assert!((cm("ansur", "man-p95") - 60.1).abs() < 1e-9);
    assert!((cm("ansur", "woman") - 56.0).abs() < 1e-9);
    assert!((cm("ansur", "adult") - 56.7).abs() < 1e-9);
}

#[test]
fn conflicts_between_sources_are_told() {
    for (table, row) in [("who", "child-4y"), ("who", "child-5y"), ("uk90", "child-4y"), ("council", "toddler")] {
        assert!(look_up(table, row).unwrap().caution.is_some(), "{table} {row}");
    }
    assert!(look_up("who", "child-2y").unwrap().caution.is_none());
}

#[test]
fn usual_heads_span_the_ages() {
    let (least, most) = usual(3, 6).unwrap();
    assert!((least.cm() - 37.2).abs() < 1e-9 && (most.cm() - 45.6).abs() < 1e-9);
    assert_eq!(usual(216, 300), None);
}

#[test]
fn an_unknown_row_lists_the_rows() {
    for (table, row) in [("who", "child-7y"), ("who", "boy-girl-2y"), ("uk90", "x"), ("council", "4y"), ("ansur", "")] {
        assert!(look_up(table, row).unwrap_err().contains("rows of"), "{table} {row}");
    }
}

/// Whatever table a row stands in: its shortest name reads, what is said of it is a list of facts, and its head is one.
#[test]
fn every_row_of_every_table_is_a_head() {
    for table in TABLES {
        let names = table.row_names();
        assert!(names.len() > 2 && table.help.contains(table.name), "{}", table.name);
        for name in names {
            let row = table.row(&name).unwrap();
            assert!((20.0..=65.0).contains(&row.head.cm()), "{} {name}: {:?}", table.name, row.head);
            let HeadSource::Table(facts) = &row.source else { panic!("{}", table.name) };
            assert!(!facts.is_empty() && row.age_months.is_none_or(|(youngest, oldest)| youngest <= oldest));
            assert_eq!(table.row(&name.to_uppercase()).unwrap(), row);
            // Its help tells of it: by its whole name, or by the age behind the last dash.
            let age = name.rsplit('-').next().unwrap();
            assert!(table.help.contains(&format!("{age}`")), "{} {name}", table.name);
        }
    }
}

/// Heads grow with age and with the percentile.
#[test]
fn rows_rise() {
    for table in TABLES {
        match table.rows {
            Rows::Growth(_, rows) | Rows::Joined(_, rows, _) => {
                assert!(rows.windows(2).all(|pair| pair[0].months < pair[1].months));
                for pair in rows.windows(2) {
                    assert!(
                        (0..3).all(|at| pair[0].boys[at] < pair[1].boys[at] && pair[0].girls[at] < pair[1].girls[at])
                    );
                }
                assert!(rows.iter().all(|row| row.boys.is_sorted() && row.girls.is_sorted()));
            }
            Rows::Grown(_, rows) => assert!(rows.iter().all(|(_, values)| values.is_sorted())),
            Rows::Ranges(rows) => assert!(rows.iter().all(|(_, least, most, _)| least < most)),
        }
    }
}

/// A design can name every table, as a field of a size and for the size's own name.
#[test]
fn every_table_is_a_field_of_a_size() {
    for table in TABLES {
        let row = &table.row_names()[2];
        for size in [format!("one: {{{}: {row}}}", table.name), format!("{row}: {}", table.name)] {
            let text = format!(
                "title: T\nswatch: {{stitch: sc, stitches: 16, rounds: 17, width: 11.3, height: 11.1}}\n\
                 ease: 0 %\nsizes: {{{size}}}\nparts: [crown]\n"
            );
            let mut report = crate::report::Report::new();
            let design = crate::design::read(&text, &mut report);
            let design = design.unwrap_or_else(|| panic!("{text}{report:#?}"));
            assert_eq!(design.sizes[0].head, Some(table.row(row).unwrap().head), "{text}");
        }
    }
}

/// A table of its own kind of figures needs nothing but its row.
#[test]
fn another_table_is_read_like_the_others() {
    let table = HeadTable {
        name: "invented",
        source: Fact::Name("Invented heads"),
        children: false,
        example: "invented: left",
        help: "rows of `invented` are `left` and `right`",
        rows: Rows::Grown([10, 50, 90], &[("left", [50.0, 52.0, 54.0]), ("right", [52.0, 54.0, 56.0])]),
        caution: no_caution,
    };
    assert_eq!(table.row("right-p90").unwrap().head, Mm::from_cm(56.0));
    assert_eq!(table.row("adult").unwrap().head, Mm::from_cm(53.0));
    assert_eq!(table.row("right-p95").unwrap_err(), table.help);
    let said = [Fact::Name("Invented heads"), Fact::Word("left"), Fact::Percentile(50)];
    assert_eq!(table.row("left").unwrap().source, HeadSource::Table(said.to_vec()));
}

/// From newborn to adult every row is larger than the one before, by no more than the steepest year of either reference,
/// and its ends are theirs: WHO at 4 years, UK 1990 at 18.
#[test]
fn one_table_runs_from_newborn_to_adult_without_a_step() {
    let rows = table("ages").unwrap().row_names();
    for sex in ["-boy", "-girl", ""] {
        for share in ["p3", "p50", "p97"] {
            let children: Vec<&String> =
                rows.iter().filter(|row| !["woman", "man", "adult"].contains(&row.as_str())).collect();
            let heads: Vec<f64> = children.iter().map(|row| cm("ages", &format!("{row}{sex}-{share}"))).collect();
            assert_eq!(heads.len(), 18);
            assert!(heads.windows(2).all(|pair| pair[1] > pair[0]), "{sex} {share}: {heads:?}");
            // From 4 years on no step of two years is more than 1.4 cm.
            assert!(heads[9..].windows(2).all(|pair| pair[1] - pair[0] < 1.4), "{sex} {share}: {heads:?}");
        }
    }
    assert!((cm("ages", "child-4y-boy") - 50.21).abs() < 1e-9);
    assert!((cm("ages", "teen-18y-boy") - 57.3).abs() < 1e-9);
    assert!((cm("ages", "adult") - cm("ansur", "adult")).abs() < 1e-9);
    assert!(rows.iter().all(|row| look_up("ages", row).unwrap().caution.is_none()));
}
