//! What the typesetter complains of, in the author's words.

use crate::SheetIn;
use crate::world::DeskWorld;
use findings::{Finding, Findings, Place, Severity};
use serde_json::Value;
use typst::diag::{Severity as Grave, SourceDiagnostic};
use typst::foundations::Bytes;
use typst::syntax::DiagSpan;
use typst::visualize::{ExchangeFormat, RasterImage, SvgImage};
use typst::{World, WorldExt};

/// Turns complaints into findings. `sheet` is the sheet that was laid alone, when one was.
pub(crate) fn findings(
    complaints: &[SourceDiagnostic],
    world: &DeskWorld<'_>,
    sheet: Option<&SheetIn>,
) -> Findings {
    let mut findings = Findings::none();
    for complaint in complaints {
        let found = match of_picture(complaint, world, sheet) {
            found if found.is_empty() => plain(complaint, world, sheet).into(),
            found => found,
        };
        findings.append(found);
    }
    for finding in &mut findings.0 {
        finding.sheet = sheet.map(|s| s.id.clone());
    }
    findings
}

/// The program has no room for more names of files.
pub(crate) fn no_room() -> Findings {
    Finding::error("press-names-used-up", "the program has printed too many different sheets")
        .remedy("close it and start it again; nothing is lost")
        .into()
}

/// Complaints whose cause lies in the author's hands, and all others as a fault of the program.
fn plain(complaint: &SourceDiagnostic, world: &DeskWorld<'_>, sheet: Option<&SheetIn>) -> Finding {
    let message = complaint.message.as_str();
    if let Some(family) = message.strip_prefix("unknown font family: ") {
        return Finding::warning("font-missing", format!("the typeface `{family}` is not at hand"))
            .remedy("name a typeface that the list of looks shows");
    }
    if message.contains("missing document title") {
        return Finding::error("title-missing", "the study has no title")
            .at(&Place::new("study.toml", "title"))
            .remedy("write its title");
    }
    if message.contains("missing alt text") {
        return Finding::error("alt-missing", "a drawing says nothing to those who cannot see it")
            .remedy("describe in its `alt` line what the picture shows");
    }
    if message.contains("could not be displayed with") {
        let what = message.split_once("the text ").map_or(message, |(_, rest)| rest);
        return Finding::error("glyph-missing", format!("some letters cannot be printed: {what}"))
            .remedy("write them in another way");
    }
    program_fault(complaint, world, sheet)
}

fn program_fault(
    complaint: &SourceDiagnostic,
    world: &DeskWorld<'_>,
    sheet: Option<&SheetIn>,
) -> Finding {
    let severity = match complaint.severity {
        Grave::Error => Severity::Error,
        Grave::Warning => Severity::Hint,
    };
    let called = sheet.map_or("this file", SheetIn::called);
    let message = match severity {
        Severity::Error => format!("`{called}` cannot be set on its pages"),
        _ => format!("`{called}` was set on its pages with a doubt"),
    };
    let detail = match spot(complaint.span, world) {
        Some(spot) => format!("{spot}: {}", complaint.message),
        None => complaint.message.to_string(),
    };
    let finding = Finding::new(severity, "press-template", message);
    let finding = match severity {
        Severity::Error => finding.remedy("leave this sheet out for now, or make another one"),
        _ => finding,
    };
    finding.remedy(format!("this is a fault of Battledore; tell its makers: {detail}"))
}

/// File and line of a complaint.
fn spot(span: DiagSpan, world: &DeskWorld<'_>) -> Option<String> {
    let id = span.id()?;
    let name = id.vpath().get_without_slash();
    let line = world.range(span).and_then(|range| {
        let source = world.source(id).ok()?;
        source.lines().byte_to_line(range.start)
    });
    Some(line.map_or_else(|| name.to_owned(), |line| format!("{name}, line {}", line + 1)))
}

/// When a picture cannot be read, the complaint points at the template: find the picture.
fn of_picture(
    complaint: &SourceDiagnostic,
    world: &DeskWorld<'_>,
    sheet: Option<&SheetIn>,
) -> Findings {
    let message = complaint.message.as_str();
    let about = ["failed to decode image", "failed to parse SVG", "unknown image format"];
    if !about.iter().any(|start| message.starts_with(start)) {
        return Findings::none();
    }
    let pictures = &world.desk.job.pictures;
    let shown = pictures.iter().filter(|(name, _)| sheet.is_none_or(|s| mentions(&s.data, name)));
    shown
        .filter(|(_, picture)| !readable(&Bytes::new(picture.bytes.clone()), &picture.ext))
        .map(|(name, picture)| {
            let file = format!("pictures/{name}.{}", picture.ext);
            Finding::error("picture-unreadable", format!("the picture `{name}` cannot be read"))
                .at(&Place::file(file))
                .remedy("open it in a drawing program and save it anew as SVG, PNG or JPEG")
        })
        .collect()
}

fn readable(bytes: &Bytes, ext: &str) -> bool {
    match ext {
        "svg" => SvgImage::new(bytes.clone()).is_ok(),
        _ => ExchangeFormat::detect(bytes)
            .is_some_and(|format| RasterImage::plain(bytes.clone(), format).is_ok()),
    }
}

/// Whether a text of the data is this name.
fn mentions(data: &Value, name: &str) -> bool {
    match data {
        Value::String(text) => text == name,
        Value::Array(items) => items.iter().any(|item| mentions(item, name)),
        Value::Object(entries) => entries.values().any(|entry| mentions(entry, name)),
        _ => false,
    }
}
