//! Colours that meet in the piece and can hardly be told apart, for the report.

use crate::plan::Plan;
use crate::report::{Diagnostic, Place, Report};
use crate::sight::{Alike, Eyes, Rgb, alike, contrast};
use crate::units::tidy;

/// Warns of colours that meet and look alike: those of the yarn at the later of the two, those of a palette at its name.
pub(super) fn tell(plan: &Plan, report: &mut Report) {
    let mut meetings: Vec<(usize, usize)> = plan.sizes.iter().flat_map(|size| size.meetings()).collect();
    meetings.sort_unstable();
    meetings.dedup();
    let yarns = &plan.design.yarn.colours;
    for (one, other) in meetings {
        let Some((first, second)) = yarns.get(one).zip(yarns.get(other)) else { continue };
        let names = (&*first.name, &*second.name);
        let warn = |of: &str, one: Rgb, other: Rgb| {
            let message = format!("{of}{}", told(names, one, other, &alike(one, other)?));
            let help = "choose one of them lighter or darker: lightness is what every eye sees";
            Some(Diagnostic::warning("colours-alike", message).help(help))
        };
        let at = |warning: Option<Diagnostic>, place: Option<Place>| warning.map(|warning| warning.at(place));
        let own = at(warn("", first.rgb, second.rgb), second.place);
        let palettes = plan.design.palettes.iter().filter_map(|palette| {
            let (one, other) = palette.colours.get(one).zip(palette.colours.get(other))?;
            at(warn(&format!("in the palette {}, ", palette.name), *one, *other), palette.place)
        });
        own.into_iter().chain(palettes).for_each(|warning| report.add(warning));
    }
}

fn told((one, other): (&str, &str), first: Rgb, second: Rgb, alike: &Alike) -> String {
    let ratio = tidy(contrast(first, second), 1);
    let meet = format!("{one} and {other} meet and are hardly told apart");
    match alike {
        Alike::All => format!("{meet} (contrast {ratio} to 1)"),
        Alike::Some(eyes) => {
            let eyes: Vec<&str> = eyes.iter().map(|eyes| kind(*eyes)).collect();
            format!("{meet} by {} eyes (contrast {ratio} to 1)", eyes.join(" and "))
        }
    }
}

/// What colour blindness of this kind is called.
const fn kind(eyes: Eyes) -> &'static str {
    match eyes {
        Eyes::Protan => "red-blind",
        Eyes::Deutan => "green-blind",
        Eyes::Tritan => "blue-blind",
    }
}

#[cfg(test)]
mod tests {
    use crate::pattern::Pattern;
    use crate::report::Severity;

    fn told(colours: &str, palettes: &str) -> Vec<(usize, String)> {
        let text = format!(
            "title: Bands\nkind: mat\nyarn: {{weight: 4, colours: {{{colours}}}}}\npalettes: {{{palettes}}}\n\
             swatch: {{stitch: sc, stitches: 16, rounds: 17, width: 10, height: 10}}\nsizes: {{one: {{across: 12}}}}\n\
             work: spiral\nparts:\n  - mat: {{start: ring of 6, shape: flat, colours: [{{a: 4}}, {{b: 2}}, {{a: rest}}]}}\n"
        );
        let pattern = Pattern::read(text.as_bytes()).unwrap();
        let alike = pattern.report.diagnostics.into_iter().filter(|one| one.code == "colours-alike");
        alike
            .map(|one| {
                assert_eq!(one.severity, Severity::Warning);
                (one.place.map_or(0, |place| place.line), one.message)
            })
            .collect()
    }

    #[test]
    fn colours_that_some_eyes_cannot_tell_apart_are_warned_of() {
        assert_eq!(told("a: \"#d9c39a\", b: \"#2f6f8f\"", ""), []);
        let found = told("a: \"#6f7a32\", b: \"#a06233\"", "calm: {a: \"#f0ead8\", b: \"#f1ecdc\"}");
        let [(3, own), (4, palette)] = &found[..] else { panic!("{found:?}") };
        assert!(own.contains("green-blind eyes (contrast 1.1 to 1)"), "{own}");
        assert!(palette.starts_with("in the palette calm, a and b meet and are hardly told apart ("), "{palette}");
    }

    #[test]
    fn colours_that_never_meet_are_not_compared() {
        assert_eq!(told("a: \"#6f7a32\", b: \"#ffffff\", c: \"#707b33\"", ""), []);
    }
}
