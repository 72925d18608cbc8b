//! One blanket adapter turns every typed kind into the object that the registry, `pack` and the studio hold.

use crate::about::About;
use crate::ask::Ask;
use crate::kind::{Head, Kind};
use craft::Dice;
use findings::{Finding, Findings};
use proof::{Laid, Proof};
use serde_json::Value;

/// A sheet after making and checking, as JSON.
#[derive(Debug, Clone, PartialEq)]
pub struct Made {
    /// Page data: exactly what the template receives.
    pub sheet: Value,
    /// Head for the frame.
    pub head: Head,
    /// Answers, if any.
    pub key: Option<Value>,
    /// What the check recomputed and found.
    pub proof: Proof,
}

/// A kind without its types, over JSON.
pub trait AnyKind: Send + Sync {
    /// What the kind says about itself.
    fn about(&self) -> &'static About;

    /// The Needs as JSON text (stable: it is hashed for the cache).
    ///
    /// # Errors
    /// Findings that keep the sheet from being made.
    fn needs(&self, ask: &Ask<'_>) -> Result<String, Findings>;

    /// Makes a sheet and proves it.
    ///
    /// # Errors
    /// Findings when it cannot be made; a sheet whose proof fails is returned with that proof.
    fn make(&self, needs: &str, dice: &mut Dice) -> Result<Made, Findings>;

    /// Proves a stored sheet again (a kept one, or one from the cache).
    ///
    /// # Errors
    /// A finding when the stored data no longer fits the kind.
    fn prove(&self, needs: &str, sheet: &Value) -> Result<Made, Findings>;

    /// Confirms the laid-out pages.
    fn check_page(&self, sheet: &Value, laid: &Laid) -> Findings;

    /// Runs the kind's own test obligations; see `tested`.
    #[cfg(test)]
    fn tested(&self) -> crate::tested::Report;
}

impl<K: Kind> AnyKind for K {
    fn about(&self) -> &'static About {
        &K::ABOUT
    }

    fn needs(&self, ask: &Ask<'_>) -> Result<String, Findings> {
        let needs = K::needs(ask)?;
        serde_json::to_string(&needs).map_err(|e| unreadable(K::ABOUT.id, &e))
    }

    fn make(&self, needs: &str, dice: &mut Dice) -> Result<Made, Findings> {
        let parsed: K::Needs =
            serde_json::from_str(needs).map_err(|e| unreadable(K::ABOUT.id, &e))?;
        let sheet = K::make(&parsed, dice)?;
        let sheet = serde_json::to_value(&sheet).map_err(|e| unreadable(K::ABOUT.id, &e))?;
        self.prove(needs, &sheet)
    }

    fn prove(&self, needs: &str, sheet: &Value) -> Result<Made, Findings> {
        let parsed: K::Needs =
            serde_json::from_str(needs).map_err(|e| unreadable(K::ABOUT.id, &e))?;
        let back: K::Sheet =
            serde_json::from_value(sheet.clone()).map_err(|e| unreadable(K::ABOUT.id, &e))?;
        let proof = K::check(&parsed, &back);
        let key = match K::key(&parsed, &back) {
            Some(key) => Some(serde_json::to_value(&key).map_err(|e| unreadable(K::ABOUT.id, &e))?),
            None => None,
        };
        Ok(Made { sheet: sheet.clone(), head: K::head(&parsed, &back), key, proof })
    }

    fn check_page(&self, sheet: &Value, laid: &Laid) -> Findings {
        match serde_json::from_value::<K::Sheet>(sheet.clone()) {
            Ok(sheet) => K::check_page(&sheet, laid),
            Err(e) => unreadable(K::ABOUT.id, &e),
        }
    }

    #[cfg(test)]
    fn tested(&self) -> crate::tested::Report {
        crate::tested::report::<K>()
    }
}

fn unreadable(kind: &str, e: &serde_json::Error) -> Findings {
    Finding::error(
        "sheet-data",
        format!("the stored data of a `{kind}` sheet does not fit this version ({e})"),
    )
    .remedy("make the sheet again")
    .into()
}
