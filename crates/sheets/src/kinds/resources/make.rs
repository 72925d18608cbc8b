//! Sorts the rows into their sections and draws the code symbols.

use super::{Listed, Needs, Row, Sheet};
use crate::code_symbol;
use findings::{Finding, Findings};

pub(super) fn make(needs: &Needs) -> Result<Sheet, Findings> {
    let mut rows = needs.rows.iter().map(with_code).collect::<Result<Vec<Row>, Findings>>()?;
    rows.sort_by_key(|r| r.section);
    let mut sections: Vec<Listed> = Vec::new();
    for row in rows {
        match sections.last_mut() {
            Some(last) if last.section == row.section => last.rows.push(row),
            _ => sections.push(Listed { section: row.section, rows: vec![row] }),
        }
    }
    Ok(Sheet { sections, caution: needs.caution.clone() })
}

fn with_code(row: &Row) -> Result<Row, Findings> {
    let mut row = row.clone();
    if let Some(address) = &row.address {
        row.code = code_symbol::rows(address).ok_or_else(|| too_long(&row))?;
    }
    Ok(row)
}

fn too_long(row: &Row) -> Findings {
    Finding::error(
        "address-too-long",
        format!("the address of `{}` is too long for a code symbol", row.title.plain()),
    )
    .at(&row.at)
    .remedy("use a shorter address of the same page")
    .into()
}
