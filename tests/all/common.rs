//! Designs, rounds and plans for tests, built without a file. Whatever a test builds begins here, so that a new field of
//! a design or a plan touches this file alone.
#![allow(dead_code, unreachable_pub)]

use roundelay::craft::{Begin, Close, Foundation, Loops, Op, Round, Stitch, Terms};
use roundelay::design::{
    Body, Design, Finish, Hand, Kind, OwnWords, Part, Preference, Profile, Said, Shape, Shaping, Size, Start, Swatch,
    Tolerance, Work, Worked, Yarn,
};
use roundelay::plan::{PartPlan, Plan, SizePlan, solve};
use roundelay::report::Report;
use roundelay::units::{Angle, Gauge, Mm, Units};
use roundelay::words::Language;

/// A value nobody wrote.
pub fn said<T>(value: T) -> Said<T> {
    Said { value, place: None }
}

/// A swatch of stitches × rounds in 100 mm.
pub fn swatch(stitch: Stitch, stitches: f64, rounds: f64) -> Swatch {
    let (wide, tall) = (Mm::new(100.0 / stitches), Mm::new(100.0 / rounds));
    let gauge = Gauge { width: wide, height: tall, thick: wide * stitch.row().thickness, grams: None, assumed: false };
    let (width, height) = (Mm::new(100.0), Mm::new(100.0));
    Swatch { stitch, worked: Worked { stitches, rounds, width, height }, gauge, place: None }
}

/// One size of a finished circumference in mm.
pub fn size(name: &str, around: f64) -> Size {
    let head = Some(Mm::new(around));
    Size {
        name: name.to_owned(),
        head,
        around: Mm::new(around),
        source: Default::default(),
        age_months: None,
        place: None,
    }
}

/// Most sizes that a scene has.
const SIZES: usize = 24;

/// A part to be solved, going on from the part before.
pub fn part(name: &str, stitch: Stitch, shape: Shape) -> Part {
    let profile = Profile {
        start: vec![Start::Before; SIZES],
        shape,
        settle: 0,
        most: 2,
        repeats: Vec::new(),
        multiple: None,
        pattern: Vec::new(),
        set_up: Vec::new(),
        folded: None,
        openings: Vec::new(),
        swatch: None,
        place: None,
    };
    let body = Body::Profile(Box::new(profile));
    Part { name: said(name.to_owned()), stitch, loops: Loops::Both, stripes: Vec::new(), notes: Vec::new(), body }
}

impl Adjust for Part {}

/// Small changes to a part.
pub trait Adjust: Sized + Into<Part> {
    /// Starts with a ring of the solver's choice.
    fn ringed(self) -> Part {
        self.starting(Start::Ring { stitches: None })
    }

    /// Starts as said.
    fn starting(self, start: Start) -> Part {
        let mut part = self.into();
        if let Body::Profile(profile) = &mut part.body {
            profile.start = vec![start; SIZES];
        }
        part
    }

    /// Ends with even rounds.
    fn settling(self, rounds: u32) -> Part {
        let mut part = self.into();
        if let Body::Profile(profile) = &mut part.body {
            profile.settle = rounds;
        }
        part
    }

    /// Has its first round under one loop.
    fn folded(self, loops: Loops) -> Part {
        Part { loops, ..self.into() }
    }
}

/// A design without parts or sizes, worked in a spiral: every field has its value here and nowhere else in the tests.
pub fn bare(title: &str, kind: Kind) -> Design {
    Design {
        title: said(title.to_owned()),
        designer: None,
        about: None,
        own: OwnWords::default(),
        photo: None,
        kind,
        units: Units::Cm,
        terms: Terms::Us,
        language: Language::EN,
        hand: Hand::Right,
        work: Work::Spiral,
        palettes: Vec::new(),
        yarn: Yarn { weight: None, fibre: None, ball: None, colours: Vec::new(), allowance: 0.1 },
        stitches: Vec::new(),
        hook: None,
        swatches: Vec::new(),
        sizes: Vec::new(),
        ease: said(0.0),
        parts: Vec::new(),
        finish: said(Finish::FastenOff),
        prefer: Preference::Balanced,
        tolerance: Tolerance::Usual,
        shaping: Shaping::Scattered,
    }
}

/// A hat of these parts and sizes, worked in a spiral of the swatch's stitch.
pub fn design(swatch: Swatch, sizes: Vec<Size>, parts: Vec<Part>) -> Design {
    let mut design = bare("Test piece", Kind::Hat);
    design.yarn.weight = Some(said(4));
    design.hook = Some(Mm::new(5.0));
    Design { swatches: vec![swatch], sizes, parts, ..design }
}

/// A round of these operations in a spiral of single crochet.
pub fn round(number: u32, ops: Vec<Op>) -> Round {
    let sums = ops.iter().fold((0, 0), |(used, made), op| (used + op.consumed, made + op.count()));
    Round {
        number,
        part: 0,
        stitch: Stitch::SC,
        before: sums.0,
        after: sums.1,
        slipped: 0,
        ops,
        colour: None,
        begin: Begin::Spiral,
        close: Close::Spiral,
        target: None,
        place: None,
        said: None,
    }
}

/// A part from one round to another, of no length and no circumference.
pub fn part_plan(name: &str, first: u32, last: u32) -> PartPlan {
    PartPlan {
        name: name.to_owned(),
        first,
        last,
        target: Mm::ZERO,
        reached: Mm::ZERO,
        wanted_length: None,
        length: Mm::ZERO,
        growth_needed: 0.0,
        growth_used: 0.0,
        worst: Mm::ZERO,
        multiple: None,
        folded: None,
        shaped_in: None,
        reasons: Vec::new(),
    }
}

/// A size of these rounds and parts, begun in a ring and fastened off.
pub fn size_plan(name: &str, rounds: Vec<Round>, parts: Vec<PartPlan>) -> SizePlan {
    SizePlan {
        name: name.to_owned(),
        head: None,
        wanted: Mm::ZERO,
        finished: Mm::ZERO,
        foundation: Foundation::Ring,
        rounds,
        parts,
        finish: Finish::FastenOff,
        step_down: Vec::new(),
        yarn: Vec::new(),
        warnings: Vec::new(),
    }
}

/// One value for each of some sizes.
pub fn each(sizes: &[Size], value: impl Fn(Mm) -> Mm) -> Vec<Mm> {
    sizes.iter().map(|size| value(size.around)).collect()
}

/// A flat-crowned sun hat in joined single crochet: crown, side folded at the back loops, brim with two even rounds.
pub fn sun_hat() -> Design {
    let sizes = vec![size("S", 529.0), size("M", 559.0), size("L", 588.0)];
    let crown = Shape::flat(each(&sizes, |around| around));
    let side = Shape::straight(vec![Mm::new(90.0), Mm::new(95.0), Mm::new(100.0)]);
    let brim = Shape::flare(vec![Mm::new(75.0); 3], vec![Angle::from_degrees(55.0); 3]);
    let parts = vec![
        part("crown", Stitch::SC, crown).ringed(),
        part("side", Stitch::SC, side).folded(Loops::Back),
        part("brim", Stitch::SC, brim).settling(2),
    ];
    let mut hat = design(swatch(Stitch::SC, 17.742, 19.672), sizes, parts);
    hat.work = Work::Joined { chain_counts: false };
    hat.finish = said(Finish::SlipStitchEdge);
    hat
}

/// A close beanie in double crochet: a dome with the rise of its radius and a straight side, stepped down.
pub fn dc_beanie() -> Design {
    let sizes = vec![size("M", 540.0)];
    let dome = Shape::dome(each(&sizes, |around| around), vec![Mm::new(80.0)]);
    let parts =
        vec![part("crown", Stitch::DC, dome).ringed(), part("side", Stitch::DC, Shape::straight(vec![Mm::new(95.0)]))];
    let mut beanie = design(swatch(Stitch::DC, 15.75, 8.5), sizes, parts);
    beanie.finish = said(Finish::StepDown);
    beanie
}

/// A basket in half double crochet: flat base, side folded at the back loops, rim folded over at the front loops.
pub fn hdc_basket() -> Design {
    let sizes = vec![size("small", 500.0)];
    let parts = vec![
        part("base", Stitch::HDC, Shape::flat(vec![Mm::new(500.0)])).ringed(),
        part("side", Stitch::HDC, Shape::straight(vec![Mm::new(120.0)])).folded(Loops::Back),
        part("rim", Stitch::HDC, Shape::straight(vec![Mm::new(30.0)])).folded(Loops::Front),
    ];
    let mut basket = design(swatch(Stitch::HDC, 13.0, 9.0), sizes, parts);
    basket.kind = Kind::Basket;
    basket.finish = said(Finish::SlipStitchEdge);
    basket
}

/// A ball in single crochet of 300 mm round.
pub fn ball() -> Design {
    let sizes = vec![size("one", 300.0)];
    let sphere = Shape::sphere(vec![Mm::new(300.0)]);
    design(swatch(Stitch::SC, 20.0, 20.0), sizes, vec![part("ball", Stitch::SC, sphere).ringed()])
}

/// The plan of a design that can be solved.
pub fn solved(design: &Design) -> Plan {
    let mut report = Report::new();
    solve(design, &mut report).unwrap_or_else(|| panic!("{report:#?}"))
}
