//! Black as black ink.
//!
//! The exporter writes greys in an ICC colour space of one component. A printer's driver may
//! turn that, like any measured colour, into a mixture of four inks; a plain `DeviceGray` is
//! printed with black ink alone. The space is one small object of the file, to which all pages
//! refer: it is replaced in place, filled up with blanks, so that no other byte moves.

/// What the grey space becomes (ISO 32000-1, 8.6.4.2).
const GREY: &[u8] = b"/DeviceGray";

/// Replaces ICC spaces of one component by `DeviceGray`. The length stays the same. A file of
/// another build than the exporter's comes back unchanged.
pub(crate) fn black_ink(mut pdf: Vec<u8>) -> Vec<u8> {
    for (start, len) in grey_spaces(&pdf).unwrap_or_default() {
        let room = &mut pdf[start..start + len];
        room.fill(b' ');
        room[..GREY.len()].copy_from_slice(GREY);
    }
    pdf
}

/// Start and length of each object that is `[/ICCBased n 0 R]` with a profile of one component.
fn grey_spaces(pdf: &[u8]) -> Option<Vec<(usize, usize)>> {
    let offsets = object_offsets(pdf)?;
    let spaces = offsets.iter().filter_map(|&at| {
        let (start, space) = object(pdf, at)?;
        let inner = space.strip_prefix(b"[/ICCBased ")?;
        let len = space.iter().position(|b| *b == b']')? + 1;
        let (profile, rest) = number(inner)?;
        let one = rest.starts_with(b" 0 R]") && one_component(pdf, *offsets.get(profile)?);
        (one && len >= GREY.len()).then_some((start, len))
    });
    Some(spaces.collect())
}

fn one_component(pdf: &[u8], at: usize) -> bool {
    let Some((_, profile)) = object(pdf, at) else { return false };
    let head = profile.windows(6).position(|w| w == b"stream").unwrap_or(0);
    let Some(place) = profile[..head].windows(3).position(|w| w == b"/N ") else { return false };
    matches!(number(&profile[place + 3..]), Some((1, _)))
}

/// Offsets of the objects by their number, from the cross-reference table (ISO 32000-1, 7.5.4):
/// entries of 20 bytes, ten of them the offset.
fn object_offsets(pdf: &[u8]) -> Option<Vec<usize>> {
    let tail = pdf.len().saturating_sub(64);
    let found = pdf[tail..].windows(9).rposition(|w| w == b"startxref")? + tail;
    let (table, _) = number(pdf.get(found + 10..)?)?;
    let body = pdf.get(table..)?.strip_prefix(b"xref")?;
    let (first, body) = number(trim(body))?;
    let (count, body) = number(trim(body))?;
    if first != 0 {
        return None;
    }
    let entries = trim(body).get(..count.checked_mul(20)?)?;
    entries.chunks_exact(20).map(|entry| number(entry).map(|(offset, _)| offset)).collect()
}

/// Where the content of an object starts, and the file from there.
fn object(pdf: &[u8], at: usize) -> Option<(usize, &[u8])> {
    let (_, rest) = number(pdf.get(at..)?)?;
    let content = trim(rest.strip_prefix(b" 0 obj")?);
    Some((pdf.len() - content.len(), content))
}

/// The number at the start, and what follows it.
fn number(text: &[u8]) -> Option<(usize, &[u8])> {
    let len = text.iter().take_while(|b| b.is_ascii_digit()).count();
    let (digits, rest) = text.split_at(len);
    Some((std::str::from_utf8(digits).ok()?.parse().ok()?, rest))
}

fn trim(text: &[u8]) -> &[u8] {
    text.trim_ascii_start()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A file of three objects: a space, its profile, and a space of three components.
    fn file(components: &str) -> Vec<u8> {
        let objects = [
            "1 0 obj\n[/ICCBased 2 0 R]\nendobj\n".to_owned(),
            format!(
                "2 0 obj\n<</Length 3/N {components}/Filter/X>>\nstream\nabc\nendstream\nendobj\n"
            ),
        ];
        let mut text = String::from("%PDF-1.7\n");
        let mut table = String::from("0000000000 65535 f\r\n");
        for object in &objects {
            table.push_str(&format!("{:010} 00000 n\r\n", text.len()));
            text.push_str(object);
        }
        let at = text.len();
        text.push_str(&format!("xref\n0 3\n{table}trailer\n<<>>\nstartxref\n{at}\n%%EOF"));
        text.into_bytes()
    }

    #[test]
    fn a_grey_space_is_replaced_in_place() {
        let before = file("1");
        let after = black_ink(before.clone());
        assert_eq!(after.len(), before.len());
        let text = String::from_utf8(after).expect("text");
        assert!(text.contains("1 0 obj\n/DeviceGray      \nendobj"), "{text}");
    }

    #[test]
    fn other_spaces_and_other_files_stay_as_they_are() {
        for bytes in [file("3"), file("12"), b"no pdf at all".to_vec(), Vec::new()] {
            assert_eq!(black_ink(bytes.clone()), bytes);
        }
    }
}
