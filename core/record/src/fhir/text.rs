//! Text as FHIR and XHTML take it, whatever was written.

use std::fmt::Write as _;

use super::element::Narrative;

/// The text without what neither JSON's readers nor XML can carry: each such character becomes a sign that shows that one stood
/// there. None where nothing is left, since FHIR knows no empty text.
pub(super) fn clean(text: &str) -> Option<String> {
    let shown: String = text.chars().map(|letter| if can_stand(letter) { letter } else { '\u{fffd}' }).collect();
    (!shown.trim().is_empty()).then(|| shown.trim().to_owned())
}

/// Line breaks and tabs may stand, other control characters and what is no character may not.
fn can_stand(letter: char) -> bool {
    let no_character = matches!(u32::from(letter) & 0xffff, 0xfffe | 0xffff) || ('\u{fdd0}'..='\u{fdef}').contains(&letter);
    matches!(letter, '\t' | '\n' | '\r') || !(letter.is_control() || no_character)
}

/// Lines as paragraphs of XHTML.
pub(super) fn narrative<'a>(lines: impl IntoIterator<Item = &'a str>) -> Option<Narrative> {
    let mut paragraphs = String::new();
    for line in lines.into_iter().filter_map(clean) {
        let _ = write!(paragraphs, "<p>{}</p>", escaped(&line));
    }
    let div = format!("<div xmlns=\"http://www.w3.org/1999/xhtml\">{paragraphs}</div>");
    (!paragraphs.is_empty()).then_some(Narrative { status: Some("generated"), div: Some(div) })
}

fn escaped(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => shown.push_str("&amp;"),
            '<' => shown.push_str("&lt;"),
            '>' => shown.push_str("&gt;"),
            '"' => shown.push_str("&quot;"),
            '\'' => shown.push_str("&#39;"),
            // A reader of XML would make a line break of it.
            '\r' => shown.push_str("&#13;"),
            other => shown.push(other),
        }
    }
    shown
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_stand_is_shown_and_the_rest_is_kept() {
        assert_eq!(clean(" \u{202e}שלום e\u{301} 👩🏽‍🍼\u{0}\u{7}\u{fffe} ").as_deref(), Some("\u{202e}שלום e\u{301} 👩🏽‍🍼���"));
        assert_eq!(clean("a\tb\nc").as_deref(), Some("a\tb\nc"));
        assert_eq!(clean(" \n\t"), None);
    }

    #[test]
    fn no_text_becomes_a_tag() {
        let div = narrative(["</div><script>\"x\" & 'y'</script>", " "]).unwrap().div.unwrap();
        let inside = "&lt;/div&gt;&lt;script&gt;&quot;x&quot; &amp; &#39;y&#39;&lt;/script&gt;";
        assert_eq!(div, format!("<div xmlns=\"http://www.w3.org/1999/xhtml\"><p>{inside}</p></div>"));
        assert_eq!(narrative([" "]), None);
    }
}
