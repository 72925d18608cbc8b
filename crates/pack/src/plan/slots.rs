//! A slot takes one of several kinds, chosen so that adding a kind moves few choices.

use study::Wanted;

/// Rendezvous hashing (Thaler and Ravishankar 1998): each candidate is scored by a
/// hash of owner and kind, the highest score wins; a new candidate can only win
/// slots for itself, never swap two old ones.
pub(crate) fn choose<'a>(owner: &str, all: &[&'a Wanted]) -> Option<&'a Wanted> {
    all.iter().copied().max_by_key(|w| score(owner, &w.kind))
}

fn score(owner: &str, kind: &str) -> [u8; 32] {
    let mut hash = blake3::Hasher::new();
    hash.update(&(owner.len() as u64).to_le_bytes());
    hash.update(owner.as_bytes());
    hash.update(kind.as_bytes());
    *hash.finalize().as_bytes()
}

#[cfg(test)]
mod tests {
    use super::*;
    use findings::Place;

    fn wanted(kind: &str) -> Wanted {
        Wanted {
            kind: kind.into(),
            count: 1,
            name: None,
            options: Default::default(),
            at: Place::default(),
        }
    }

    #[test]
    fn a_new_kind_takes_only_its_own_share() {
        let four: Vec<Wanted> =
            ["matching", "maze", "unscramble", "word-search"].map(wanted).into();
        let three: Vec<&Wanted> = four.iter().take(3).collect();
        let all: Vec<&Wanted> = four.iter().collect();
        let mut moved = 0;
        for n in 0..1000 {
            let owner = format!("ls-{n:08x}");
            let before = choose(&owner, &three).map(|w| w.kind.as_str());
            let after = choose(&owner, &all).map(|w| w.kind.as_str());
            if before != after {
                assert_eq!(after, Some("word-search"), "a choice moved between two old kinds");
                moved += 1;
            }
        }
        // Each of four equal candidates wins a quarter: 250 of 1000, sd 13.7.
        assert!((180..=320).contains(&moved), "{moved} of 1000 choices moved");
    }
}
