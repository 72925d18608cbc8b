//! The contract of a kind of sheet.

use crate::about::About;
use crate::ask::Ask;
use craft::Dice;
use findings::Findings;
use proof::{Laid, Proof};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

#[cfg(test)]
use crate::tested::Tested;
/// Outside tests every kind passes as tested; in tests `tested::Tested` demands fixtures and planted faults.
#[cfg(not(test))]
pub trait Tested {}
#[cfg(not(test))]
impl<T> Tested for T {}

/// The head of a sheet, as the frame prints it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Head {
    /// Title of the sheet.
    pub title: String,
    /// One sentence under the title, where a child begins; or none.
    pub lead: Option<String>,
    /// Lines for name and date, where the child writes.
    pub name_line: bool,
    /// Printed on card and cut out.
    pub card: bool,
    /// No head and foot of the frame (the cover).
    pub bare: bool,
    /// Names of the pictures it shows.
    pub pictures: Vec<String>,
    /// Ids of the facts it uses, for sources and credits.
    pub facts: Vec<String>,
}

/// A kind of sheet: one folder of code.
///
/// Data flows one way: `needs` looks at the study; `make` and `check` see only
/// the Needs. `check` is given the sheet as it came back from its page data, so
/// it can judge only what will be printed.
pub trait Kind: Tested + Send + Sync + 'static {
    /// What the kind says about itself.
    const ABOUT: About;
    /// All that the sheet is made from, resolved: words, texts, sizes, band, level.
    type Needs: Serialize + DeserializeOwned;
    /// The sheet: exactly the data that the page template receives.
    type Sheet: Serialize + DeserializeOwned;
    /// Its answers: exactly the data that the template's `answer` receives.
    type Key: Serialize;

    /// Works out the Needs, or says what the author should add.
    ///
    /// # Errors
    /// Findings that keep the sheet from being made, each with a remedy.
    fn needs(ask: &Ask<'_>) -> Result<Self::Needs, Findings>;

    /// Makes the sheet.
    ///
    /// # Errors
    /// Findings when the Needs cannot be met, with the reason.
    fn make(needs: &Self::Needs, dice: &mut Dice) -> Result<Self::Sheet, Findings>;

    /// Recomputes from the printed data alone whether the sheet is right.
    fn check(needs: &Self::Needs, sheet: &Self::Sheet) -> Proof;

    /// The head that the frame prints.
    fn head(needs: &Self::Needs, sheet: &Self::Sheet) -> Head;

    /// Answers, when the sheet has any.
    fn key(_needs: &Self::Needs, _sheet: &Self::Sheet) -> Option<Self::Key> {
        None
    }

    /// Confirms on the laid-out page what must be true on paper.
    fn check_page(_sheet: &Self::Sheet, _laid: &Laid) -> Findings {
        Findings::none()
    }
}
