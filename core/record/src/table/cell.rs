//! A cell that every reader takes for what it is.
//!
//! A spreadsheet takes a text that begins with one of `= + - @`, a tab or a carriage return for a formula, and runs it. So an
//! apostrophe is put before such a text, and before one that begins with an apostrophe or the wide form of such a sign: whoever
//! takes one apostrophe off the beginning of a text has the text as it was written. Numbers are written by this program alone
//! and stay as they are, a minus too. Characters that no person types and some readers stop at are replaced by their pictures.

/// What stands in a cell.
pub(super) enum Cell {
    /// A number, with a point and nothing between its figures.
    Number(String),
    /// Words, an id or a time.
    Text(String),
}

impl Cell {
    pub fn nothing() -> Self {
        Self::Text(String::new())
    }

    /// So many parts, of which `whole` make one.
    pub fn parts(value: i64, whole: u32) -> Self {
        let whole = u64::from(whole.max(1));
        let (sign, value) = (if value < 0 { "-" } else { "" }, value.unsigned_abs());
        let places = whole.ilog10() as usize;
        let number = format!("{sign}{}.{:0places$}", value / whole, value % whole);
        Self::Number(number.trim_end_matches('0').trim_end_matches('.').to_owned())
    }

    /// As it goes into the file, before it is quoted.
    pub fn written(self) -> String {
        match self {
            Self::Number(number) => number,
            Self::Text(text) => {
                let shown: String = text.chars().map(shown).collect();
                if shown.starts_with(guarded) { format!("'{shown}") } else { shown }
            }
        }
    }
}

fn guarded(first: char) -> bool {
    matches!(first, '=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '\'' | '＝' | '＋' | '－' | '＠')
}

/// A control character as its picture; others as they are.
fn shown(character: char) -> char {
    match character {
        '\t' | '\n' | '\r' => character,
        '\0'..='\u{1f}' => char::from_u32(0x2400 + u32::from(character)).unwrap_or('\u{fffd}'),
        '\u{7f}' => '\u{2421}',
        '\u{80}'..='\u{9f}' | '\u{feff}' | '\u{fffe}' | '\u{ffff}' => '\u{fffd}',
        _ => character,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(text: &str) -> String {
        Cell::Text(text.to_owned()).written()
    }

    #[test]
    fn no_text_is_a_formula_and_each_reads_back() {
        for formula in ["=cmd|' /C calc'!A0", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "'=1", "''", "＝1"] {
            assert_eq!(text(formula), format!("'{formula}"));
        }
        for plain in ["", "calm", "10-12", "a=b", " =1", "مريم", "e\u{301}", "👩‍🍼", "</script>", "\u{202e}x"] {
            assert_eq!(text(plain), plain);
        }
    }

    #[test]
    fn what_no_person_types_is_seen() {
        assert_eq!(text("a\0b\u{1b}c\u{7f}d\u{85}e\u{feff}"), "a␀b␛c␡d�e�");
    }

    #[test]
    fn a_number_has_a_point_and_no_more_places_than_it_needs() {
        let parts = |value, whole| Cell::parts(value, whole).written();
        assert_eq!(parts(371, 10), "37.1");
        assert_eq!(parts(370, 10), "37");
        assert_eq!(parts(-61_250, 1_000), "-61.25");
        assert_eq!(parts(-5, 1_000), "-0.005");
        assert_eq!(parts(100, 1), "100");
        assert_eq!(parts(0, 100), "0");
        assert_eq!(parts(i64::MIN, 1_000), "-9223372036854775.808");
    }
}
