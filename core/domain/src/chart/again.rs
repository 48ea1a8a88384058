//! Touches on a button too soon after its mark to be marks of their own: told beside the mark.

use super::{Chart, Line};
use crate::fact::Fact;

impl Chart {
    /// The touches that came again on the button of this line's mark, in order of time.
    pub fn touched_again<'a>(&'a self, line: &'a Line) -> impl Iterator<Item = &'a Line> {
        let of_this = |other: &&Line| matches!(other.first.fact, Fact::TouchedAgain { entry, .. } if entry == line.first.id);
        self.lines.iter().filter(of_this)
    }

    /// The lines that stand by themselves, in order of time.
    pub fn told_lines(&self) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(|line| !self.is_told_beside(line))
    }

    /// Whether a line tells only of a touch that came again, and its mark stands here: it is told there.
    fn is_told_beside(&self, line: &Line) -> bool {
        match line.first.fact {
            Fact::TouchedAgain { entry, .. } => self.lines.iter().any(|other| other.first.id == entry),
            _ => false,
        }
    }
}
