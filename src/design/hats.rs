//! Hat size labels and the brims that shade.

use crate::units::Mm;

/// Hat size as labelled in the United States: circumference in inches over π, to the nearest eighth (`7 1/8`).
pub fn us_hat_size(around: Mm) -> String {
    eighths((around.inches() / core::f64::consts::PI * 8.0).round())
}

/// Hat size as labelled in the United Kingdom: an eighth less than the US label by most sources; some use the same.
pub fn uk_hat_size(around: Mm) -> String {
    eighths((around.inches() / core::f64::consts::PI * 8.0).round() - 1.0)
}

fn eighths(count: f64) -> String {
    let count = count.max(0.0) as u64;
    let (whole, rest) = (count / 8, count % 8);
    let fraction = ["", " 1/8", " 1/4", " 3/8", " 1/2", " 5/8", " 3/4", " 7/8"][rest as usize];
    format!("{whole}{fraction}")
}

/// Least flat width of a brim that shades, by age in months; no age is an adult. Health agencies of Australia and New
/// Zealand: 5 cm to 8 years, 6 cm to 12, then 7.5 cm for a broad and 6 cm for a bucket brim.
pub fn least_sun_brim(age_months: Option<u32>, bucket: bool) -> Mm {
    match age_months.map(|months| months / 12) {
        Some(0..=8) => Mm::from_cm(5.0),
        Some(9..=11) => Mm::from_cm(6.0),
        Some(_) | None if bucket => Mm::from_cm(6.0),
        Some(_) | None => Mm::from_cm(7.5),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published conversion tables; 57 cm = US 7 1/8 = UK 7 is the example printed with them.
    #[test]
    fn labels_follow_the_printed_table() {
        let table = [
            (52.0, "6 1/2", "6 3/8"),
            (54.0, "6 3/4", "6 5/8"),
            (56.0, "7", "6 7/8"),
            (57.0, "7 1/8", "7"),
            (58.0, "7 1/4", "7 1/8"),
            (60.0, "7 1/2", "7 3/8"),
            (63.0, "7 7/8", "7 3/4"),
        ];
        for (cm, us, uk) in table {
            let around = Mm::from_cm(cm);
            assert_eq!((us_hat_size(around).as_str(), uk_hat_size(around).as_str()), (us, uk), "{cm} cm");
        }
    }

    /// sunsmart.org.nz and sunsmart.com.au: 5, 6 and 7.5 cm.
    #[test]
    fn brims_by_age() {
        let widths = [(Some(24), 5.0), (Some(8 * 12), 5.0), (Some(10 * 12), 6.0), (Some(12 * 12), 7.5), (None, 7.5)];
        for (age, cm) in widths {
            assert!((least_sun_brim(age, false).cm() - cm).abs() < 1e-9, "{age:?}");
        }
        assert!((least_sun_brim(None, true).cm() - 6.0).abs() < 1e-9);
    }
}
