//! Fewer pixels: each is the mean of the light that falls on its area.

use super::Photo;
use crate::sight::{encoded, linear};

/// Steps of light that are told apart on the way back to sRGB.
const STEPS: usize = 4096;

/// A picture with as many pixels as asked for, from the rows of one with at least as many.
pub(super) fn scaled(from: (u32, u32), to: (u32, u32), row: impl Fn(usize) -> Vec<[u8; 3]>) -> Photo {
    let (width, height) = to;
    if from == to {
        return Photo { width, height, rgb: (0..height as usize).flat_map(row).collect() };
    }
    let light: Vec<f32> = (0..=255).map(|channel| linear(channel) as f32).collect();
    let channels: Vec<u8> = (0..=STEPS).map(|step| encoded(step as f64 / STEPS as f64)).collect();
    let across = spans(from.0, width);
    let mut rgb = Vec::with_capacity(width as usize * height as usize);
    for (first, shares) in spans(from.1, height) {
        let mut sums = vec![[0.0_f32; 3]; width as usize];
        for (index, share) in shares.iter().enumerate() {
            let row = row(first + index);
            for (sum, (first, shares)) in sums.iter_mut().zip(&across) {
                for (pixel, within) in row.iter().skip(*first).zip(shares) {
                    let weight = share * within;
                    for (sum, channel) in sum.iter_mut().zip(pixel) {
                        *sum += weight * light.get(usize::from(*channel)).copied().unwrap_or_default();
                    }
                }
            }
        }
        let back = |light: f32| {
            let step = (light * STEPS as f32).round() as usize;
            channels.get(step.min(STEPS)).copied().unwrap_or(255)
        };
        rgb.extend(sums.into_iter().map(|sum| sum.map(back)));
    }
    Photo { width, height, rgb }
}

/// For each of `to` pixels along a side the first of `from` that it covers, and the share that each has in it.
fn spans(from: u32, to: u32) -> Vec<(usize, Vec<f32>)> {
    let (from, to) = (u64::from(from.max(1)), u64::from(to.max(1)));
    let span = |pixel: u64| {
        // In parts of a pixel that divide both: a pixel of the one is `to` parts long, one of the other `from`.
        let (start, end) = (pixel * from, (pixel + 1) * from);
        let covered = start / to..end.div_ceil(to);
        let share = |other: u64| {
            let shared = end.min((other + 1) * to) - start.max(other * to);
            shared as f32 / from as f32
        };
        (covered.start as usize, covered.map(share).collect())
    };
    (0..to).map(span).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn photo(width: u32, greys: &[u8]) -> Photo {
        let rgb: Vec<[u8; 3]> = greys.iter().map(|grey| [*grey; 3]).collect();
        Photo { width, height: rgb.len() as u32 / width, rgb }
    }

    #[test]
    fn one_colour_stays_itself() {
        for grey in [0, 1, 17, 128, 200, 254, 255] {
            let photo = photo(7, &[grey; 35]);
            let small = photo.shrunk(3, 2);
            assert_eq!((small.size(), small.pixels()), ((3, 2), &[[grey; 3]; 6][..]));
        }
    }

    /// Half the light of white is 188 in sRGB (IEC 61966-2-1: 1.055 × 0.5^(1/2.4) − 0.055 = 0.7354), not 128.
    #[test]
    fn light_is_averaged_and_not_its_code() {
        assert_eq!(photo(2, &[0, 255, 255, 0]).shrunk(1, 1).pixels(), [[188; 3]]);
    }

    #[test]
    fn a_pixel_that_two_share_is_shared() {
        // Three pixels on two: the middle one half to each. 0.5 of 1.5 is a third of the light: 156.
        assert_eq!(photo(3, &[0, 255, 0]).shrunk(2, 1).pixels(), [[156; 3]; 2]);
    }

    #[test]
    fn spans_cover_a_side_once() {
        for (from, to) in [(1, 1), (7, 3), (2400, 2399), (65_535, 2400)] {
            let spans = spans(from, to);
            assert_eq!(spans.len(), to as usize);
            for (_, shares) in &spans {
                assert!((shares.iter().sum::<f32>() - 1.0).abs() < 1e-4, "{from} to {to}: {shares:?}");
            }
            let last = spans.last().map(|(first, shares)| first + shares.len());
            assert_eq!(last, Some(from as usize));
        }
    }
}
