//! A table in a text file (RFC 4180), read with the byte range of every cell,
//! so that one cell can be written back and all other bytes stay.

use std::ops::Range;

/// One cell.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Cell {
    /// Its bytes in the file, quotation marks included.
    pub span: Range<usize>,
    /// Its text, quotation marks taken off.
    pub text: String,
    /// Was it in quotation marks?
    pub quoted: bool,
}

/// One row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Record {
    /// Its bytes in the file, without the line end.
    pub span: Range<usize>,
    /// Its cells.
    pub cells: Vec<Cell>,
}

/// A whole table; rows without any text are left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Scan {
    /// Rows, the header first.
    pub records: Vec<Record>,
    /// The sign between cells: comma, semicolon or tab.
    pub delimiter: char,
    /// Where a quotation mark opens that is never closed.
    pub unclosed: Option<usize>,
    /// Where letters follow a closing quotation mark.
    pub after_quote: Option<usize>,
}

/// Reads a table. The sign between cells is taken from the header line: a
/// comma, else a semicolon, else a tab, as spreadsheet programs of different
/// countries write them.
pub(crate) fn scan(text: &str) -> Scan {
    let start = if text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
    let body = text.get(start..).unwrap_or_default();
    let header = body.split(['\n', '\r']).find(|l| !l.trim().is_empty()).unwrap_or_default();
    let delimiter = [',', ';', '\t'].into_iter().find(|d| header.contains(*d)).unwrap_or(',');
    let mut scan = Scan { records: Vec::new(), delimiter, unclosed: None, after_quote: None };
    let mut at = start;
    while at < text.len() {
        let (record, next) = record(text, at, &mut scan);
        at = next;
        if record.cells.iter().any(|c| !c.text.trim().is_empty()) {
            scan.records.push(record);
        }
    }
    scan
}

fn record(text: &str, start: usize, scan: &mut Scan) -> (Record, usize) {
    let mut cells = Vec::new();
    let mut at = start;
    loop {
        let (cell, end) = cell(text, at, scan);
        cells.push(cell);
        let rest = text.get(end..).unwrap_or_default();
        match rest.chars().next() {
            Some(c) if c == scan.delimiter => at = end + c.len_utf8(),
            Some(_) => {
                let step = if rest.starts_with("\r\n") { 2 } else { 1 };
                return (Record { span: start..end, cells }, end + step);
            }
            None => return (Record { span: start..end, cells }, end),
        }
    }
}

/// One cell from `at`, and the index of the delimiter or line end that closes it.
fn cell(text: &str, at: usize, scan: &mut Scan) -> (Cell, usize) {
    let rest = text.get(at..).unwrap_or_default();
    let mut value = String::new();
    let quoted = rest.starts_with('"');
    let mut inside = quoted;
    let mut signs = rest.char_indices().skip(usize::from(quoted)).peekable();
    while let Some((i, c)) = signs.next() {
        match c {
            '"' if inside => {
                if signs.next_if(|(_, next)| *next == '"').is_some() {
                    value.push('"');
                } else {
                    inside = false;
                }
            }
            '\n' | '\r' if !inside => {
                return (Cell { span: at..at + i, text: value, quoted }, at + i);
            }
            c if c == scan.delimiter && !inside => {
                return (Cell { span: at..at + i, text: value, quoted }, at + i);
            }
            c => {
                if quoted && !inside && !c.is_whitespace() {
                    scan.after_quote.get_or_insert(at + i);
                }
                value.push(c);
            }
        }
    }
    if inside {
        scan.unclosed.get_or_insert(at);
    }
    (Cell { span: at..text.len(), text: value, quoted }, text.len())
}

/// A cell as it is written: in quotation marks when it must be, or when it was before.
pub(crate) fn written(value: &str, quoted: bool, delimiter: char) -> String {
    let must = value.contains([delimiter, '"', '\n', '\r'])
        || value.starts_with(' ')
        || value.ends_with(' ');
    if must || quoted { format!("\"{}\"", value.replace('"', "\"\"")) } else { value.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::{scan, written};
    use proptest::prelude::*;

    fn texts(text: &str) -> Vec<Vec<String>> {
        scan(text)
            .records
            .into_iter()
            .map(|r| r.cells.into_iter().map(|c| c.text).collect())
            .collect()
    }

    #[test]
    fn quotation_marks_line_ends_and_delimiters() {
        assert_eq!(texts("a,b\r\n\"x, \"\"y\"\"\",\r\n"), [["a", "b"], ["x, \"y\"", ""]]);
        assert_eq!(texts("\u{feff}a;b\n1;2"), [["a", "b"], ["1", "2"]]);
        assert_eq!(texts("a\tb\n\n,\n1,5\t2"), [vec!["a", "b"], vec![","], vec!["1,5", "2"]]);
        assert_eq!(texts("a,b\n,\n\"two\nlines\",2"), [["a", "b"], ["two\nlines", "2"]]);
        assert_eq!(scan("a,b\n1,\"2").unclosed, Some(6));
        assert_eq!(scan("a,b\n1,\"2\"x").after_quote, Some(9));
    }

    fn with_reader(text: &str) -> Vec<Vec<String>> {
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_bytes());
        reader
            .records()
            .map(|r| r.expect("a text is UTF-8").iter().map(str::to_owned).collect())
            .collect()
    }

    proptest! {
        /// The csv crate is the outside judge of RFC 4180.
        #[test]
        fn agrees_with_an_outside_reader(text in "[ab,\"\n\r é]{0,40}") {
            let text = format!("h,i\n{text}");
            let ours = texts(&text);
            let mut theirs = with_reader(&text);
            theirs.retain(|r| r.iter().any(|c| !c.trim().is_empty()));
            prop_assert_eq!(ours, theirs);
        }

        #[test]
        fn a_written_cell_reads_back(value in "[a,;\"\n\t é]{0,12}", quoted: bool) {
            let text = format!("h,i\nx,{}\n", written(&value, quoted, ','));
            let rows = texts(&text);
            prop_assert_eq!(&rows[1][1], &value);
        }
    }
}
