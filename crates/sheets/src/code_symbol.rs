//! Code symbols (QR Code, ISO/IEC 18004) for addresses, as rows of modules.

use fast_qr::{ECL, QRBuilder};

/// Rows of `0` and `1`, dark modules `1`, without the quiet zone, which the template adds.
///
/// Error correction level M (about 15 % of the words may be spoilt): paper on a
/// kitchen table gets wet. None when the text is longer than a symbol of the
/// standard can hold (2331 bytes at level M).
pub fn rows(text: &str) -> Option<Vec<String>> {
    let symbol = QRBuilder::new(text).ecl(ECL::M).build().ok()?;
    let row = |y: usize| {
        symbol[y][..symbol.size].iter().map(|m| if m.value() { '1' } else { '0' }).collect()
    };
    Some((0..symbol.size).map(row).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proof::symbol;

    #[test]
    fn an_address_is_read_back_by_another_library() {
        for address in [
            "https://noc.ac.uk",
            "https://easytide.admiralty.co.uk/FAQs",
            &format!("https://example.org/{}", "a".repeat(150)),
        ] {
            let rows = rows(address).expect("a symbol");
            assert!(symbol::finders_hold(&rows));
            assert_eq!(symbol::read(&rows).as_deref(), Some(address));
        }
    }

    #[test]
    fn capacity_follows_the_standard() {
        // Bytes at level M: v1 14, v3 42, v10 213, v40 2331 (ISO/IEC 18004, table 7); one more needs the next version.
        for (version, bytes) in [(1, 14), (3, 42), (10, 213)] {
            let side = |n: usize| rows(&"a".repeat(n)).map(|r| r.len());
            assert_eq!(side(bytes), Some(17 + 4 * version), "version {version}");
            assert_eq!(side(bytes + 1), Some(17 + 4 * (version + 1)), "after version {version}");
        }
        assert!(rows(&"a".repeat(2331)).is_some());
        assert_eq!(rows(&"a".repeat(2332)), None);
    }
}
