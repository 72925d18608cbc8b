//! Groups the entries by lesson in order of number.

use super::{Group, Lesson, Needs, Sheet};

pub(super) fn make(needs: &Needs) -> Sheet {
    let mut groups: Vec<Group> = Vec::new();
    let mut now = None;
    for sheet in &needs.sheets {
        if groups.is_empty() || now != sheet.lesson {
            let lesson = sheet.lesson.and_then(|l| Some(Lesson { n: l + 1, title: needs.lessons.get(l)?.clone() }));
            groups.push(Group { lesson, entries: Vec::new() });
            now = sheet.lesson;
        }
        if let Some(group) = groups.last_mut() {
            group.entries.push(sheet.entry.clone());
        }
    }
    Sheet { groups }
}
