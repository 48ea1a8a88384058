//! A cell that every reader takes for what it is.
//!
//! A spreadsheet takes a text that begins with one of `= + - @`, a tab or a carriage return for a formula, and runs it. So an
//! apostrophe is put before such a text, before one that begins with an apostrophe or the wide form of such a sign, and before
//! words of people that are figures and marks alone: a batch 0012 is no twelve, 02:40 no fraction of a day. Whoever takes one
//! apostrophe off the beginning of a text has the text as it was written. A day such as 2026-11-25 stays one. Numbers are written
//! by this program alone and stay as they are, a minus too. Characters that no person types and some readers stop at are
//! replaced by their pictures.

/// What stands in a cell.
pub(super) enum Cell {
    /// A number, with a point and nothing between its figures.
    Number(String),
    /// An id, a code or a time, as this program writes it.
    Code(String),
    /// Words of people.
    Text(String),
}

impl Cell {
    pub fn nothing() -> Self {
        Self::Code(String::new())
    }

    pub fn code(code: impl ToString) -> Self {
        Self::Code(code.to_string())
    }

    pub fn text(text: impl ToString) -> Self {
        Self::Text(text.to_string())
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
        let (text, words) = match self {
            Self::Number(number) => return number,
            Self::Code(code) => (code, false),
            Self::Text(text) => (text, true),
        };
        let shown: String = text.chars().map(shown).collect();
        let guard = shown.starts_with(guarded) || (words && like_a_number(&shown));
        if guard { format!("'{shown}") } else { shown }
    }
}

fn guarded(first: char) -> bool {
    matches!(first, '=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '\'' | '＝' | '＋' | '－' | '＠')
}

/// Figures and the marks that stand between them, other than a day.
fn like_a_number(text: &str) -> bool {
    let day = |(n, byte): (usize, u8)| if n == 4 || n == 7 { byte == b'-' } else { byte.is_ascii_digit() };
    let figures = text.bytes().any(|byte| byte.is_ascii_digit());
    figures
        && text.bytes().all(|byte| byte.is_ascii_digit() || b" .,:/-+()%eETZ".contains(&byte))
        && !(text.len() == 10 && text.bytes().enumerate().all(day))
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
        Cell::text(text).written()
    }

    #[test]
    fn no_text_is_a_formula_and_each_reads_back() {
        for formula in ["=cmd|' /C calc'!A0", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "'=1", "''", "＝1"] {
            assert_eq!(text(formula), format!("'{formula}"));
        }
        for number in ["0012", "10-12", "1E5", "1/2", "2026-11-25 02:40", "2026-11-25T02:40", "12", "(030) 12 34", "50 %"] {
            assert_eq!(text(number), format!("'{number}"));
            assert_eq!(Cell::code(number).written(), number);
        }
        for plain in ["", "calm", "10 IU", "2026-11-25", "...", "a=b", " =1", "مريم", "e\u{301}", "👩‍🍼", "</script>", "\u{202e}x"]
        {
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
