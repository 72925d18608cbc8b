//! What every kind owes in tests: good fixtures, asks that must fail, and planted faults that `check` must reject.

use crate::adapter::AnyKind;
use crate::kind::Kind;
use craft::Dice;
use findings::Findings;

/// A planted fault: name of its class, and how a good sheet is spoilt.
/// Returns false when this sheet offers no place for the fault (at least one of the tried sheets must).
pub type Fault<K> =
    (&'static str, fn(&<K as Kind>::Needs, &mut <K as Kind>::Sheet, &mut Dice) -> bool);

/// Implemented in each kind's `tests.rs`.
pub trait Tested: Sized {
    /// Needs that can be met, at several levels and bands.
    fn good() -> Vec<<Self as Kind>::Needs>
    where
        Self: Kind;

    /// Needs (or asks) that must be refused: the results of `make` or `needs`, each with findings expected.
    fn refused() -> Vec<(&'static str, Result<(), Findings>)>
    where
        Self: Kind;

    /// Classes of planted faults; empty only for a kind that has nothing to prove.
    fn faults() -> &'static [Fault<Self>]
    where
        Self: Kind;
}

/// What the registry tests read.
#[derive(Debug, Default)]
pub struct Report {
    /// Number of good fixtures.
    pub good: usize,
    /// Number of refused ones.
    pub refused: usize,
    /// Names of fault classes.
    pub faults: Vec<&'static str>,
    /// What went against the contract.
    pub broken: Vec<String>,
}

const SEEDS: u64 = 12;

/// Makes all fixtures over many seeds, spoils them, and notes every breach of the contract.
pub fn report<K: Kind>() -> Report {
    let good = K::good();
    let refused = K::refused();
    let mut report = Report {
        good: good.len(),
        refused: refused.len(),
        faults: K::faults().iter().map(|f| f.0).collect(),
        broken: Vec::new(),
    };
    for (name, result) in &refused {
        match result {
            Ok(()) => report.broken.push(format!("`{name}` should be refused")),
            Err(f) if !f.has_errors() => {
                report.broken.push(format!("`{name}` is refused without an error"))
            }
            Err(f) => {
                for finding in f.iter().filter(|f| f.remedies.is_empty()) {
                    report.broken.push(format!("`{name}`: no remedy: {}", finding.message));
                }
            }
        }
    }
    for (i, needs) in good.iter().enumerate() {
        let round: K::Needs =
            serde_json::from_str(&serde_json::to_string(needs).expect("needs to JSON"))
                .expect("needs from JSON");
        for seed in 0..SEEDS {
            one::<K>(&round, i, seed, &mut report);
        }
    }
    report.broken.extend(never_planted::<K>(&good));
    report
}

fn one<K: Kind>(needs: &K::Needs, i: usize, seed: u64, report: &mut Report) {
    let make = || K::make(needs, &mut Dice::from_number(seed));
    let (first, again) = match (make(), make()) {
        (Ok(a), Ok(b)) => (a, b),
        (Err(f), _) | (_, Err(f)) => {
            report.broken.push(format!("fixture {i} seed {seed} not made: {f:?}"));
            return;
        }
    };
    let bytes = |s: &K::Sheet| serde_json::to_vec(s).expect("sheet to JSON");
    if bytes(&first) != bytes(&again) {
        report.broken.push(format!("fixture {i} seed {seed}: same seed, other bytes"));
    }
    let proof = K::check(needs, &first);
    if !proof.holds() {
        report
            .broken
            .push(format!("fixture {i} seed {seed} fails its own proof: {:?}", proof.findings));
    }
    for (name, spoil) in K::faults() {
        let mut bad: K::Sheet = serde_json::from_slice(&bytes(&first)).expect("sheet from JSON");
        if spoil(needs, &mut bad, &mut Dice::from_number(seed + 1000))
            && K::check(needs, &bad).holds()
        {
            report.broken.push(format!("fixture {i} seed {seed}: planted fault `{name}` passed"));
        }
    }
}

fn never_planted<K: Kind>(good: &[K::Needs]) -> Vec<String> {
    let planted = |spoil: &fn(&K::Needs, &mut K::Sheet, &mut Dice) -> bool| {
        good.iter().any(|needs| {
            (0..SEEDS).any(|seed| {
                K::make(needs, &mut Dice::from_number(seed))
                    .is_ok_and(|mut s| spoil(needs, &mut s, &mut Dice::from_number(seed + 1000)))
            })
        })
    };
    K::faults()
        .iter()
        .filter(|(_, f)| !planted(f))
        .map(|(n, _)| format!("fault `{n}` was never planted"))
        .collect()
}

/// Runs the report of a kind and fails with all breaches listed; call it from each kind's `tests.rs`.
pub fn keeps_contract<K: Kind + AnyKind>(kind: &K) {
    let report = kind.tested();
    assert!(report.broken.is_empty(), "{}:\n{}", K::ABOUT.id, report.broken.join("\n"));
}
