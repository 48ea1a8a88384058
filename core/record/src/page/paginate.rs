//! Putting strips on pages.

use super::strip::Strip;

/// The strips of one page, each with its distance from the top of the body in points.
pub(super) type Page = Vec<(f32, Strip)>;

/// Fills pages whose body is `height` points tall, in order. There is always at least one page.
///
/// A strip that must not be last stays with the strip after it, unless they do not fit on one page together.
pub(super) fn paginate(strips: Vec<Strip>, height: f32) -> Vec<Page> {
    let mut pages = Pages { done: Vec::new(), page: Vec::new(), used: 0.0, height };
    let mut group = Vec::new();
    for strip in strips {
        let open = strip.keep;
        group.push(strip);
        if !open {
            pages.place(std::mem::take(&mut group));
        }
    }
    pages.place(group);
    pages.done.push(pages.page);
    pages.done
}

/// Pages with what is left of their height parted above and below, a little more below.
pub(super) fn centred(pages: Vec<Page>, height: f32) -> Vec<Page> {
    let lower = |page: Page| {
        let used = page.last().map_or(0.0, |(top, strip)| top + strip.height);
        let by = (height - used).max(0.0) * 0.4;
        page.into_iter().map(|(top, strip)| (top + by, strip)).collect()
    };
    pages.into_iter().map(lower).collect()
}

struct Pages {
    done: Vec<Page>,
    page: Page,
    used: f32,
    height: f32,
}

impl Pages {
    fn place(&mut self, group: Vec<Strip>) {
        let tall: f32 = group.iter().map(|strip| strip.before + strip.height).sum();
        // On a page of their own there is nothing above the first.
        if tall - group.first().map_or(0.0, |strip| strip.before) > self.height {
            // They cannot stay together, so each goes where it fits.
            for strip in group {
                self.make_room(strip.before + strip.height);
                self.push(strip);
            }
            return;
        }
        self.make_room(tall);
        for strip in group {
            self.push(strip);
        }
    }

    fn make_room(&mut self, tall: f32) {
        if !self.page.is_empty() && self.used + tall > self.height {
            self.done.push(std::mem::take(&mut self.page));
            self.used = 0.0;
        }
    }

    fn push(&mut self, strip: Strip) {
        if self.page.is_empty() {
            if let Some(header) = &strip.header {
                self.page.push((0.0, header.repeated()));
                self.used = header.height;
            }
        } else {
            self.used += strip.before;
        }
        let top = self.used;
        self.used += strip.height;
        self.page.push((top, strip));
    }
}
