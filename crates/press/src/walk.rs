//! From laid-out frames to plain numbers.

use crate::drawn::{Area, Drawn, Ink, LeafFacts, What, um};
use crate::room::{area, missing, of_text, right_angled};
use crate::spot::Spot;
use findings::Place;
use proof::{LaidImage, LaidPage, LaidText, Mark};
use std::collections::BTreeMap;
use std::sync::Arc;
use typst::introspection::{Location, MetadataElem, Tag};
use typst::layout::{Abs, Frame, FrameItem, GroupItem, Point, Rect, Size, Transform};
use typst::pdf::{ArtifactElem, ArtifactKind};
use typst::text::TextItem;
use typst::utils::hash128;
use typst::visualize::{Image, ImageKind, Shape};
use typst_layout::PagedDocument;

/// What the templates call the mark of a picture.
pub(crate) const PICTURE: &str = "picture";

/// Walks all pages in order. `pictures` names the pictures by the hash of their bytes.
pub(crate) fn walk(document: &PagedDocument, pictures: &BTreeMap<u128, String>) -> Vec<Drawn> {
    let mut walker = Walker::new(pictures);
    document
        .pages()
        .iter()
        .zip(1..)
        .map(|(page, number)| walker.page(number, &page.frame))
        .collect()
}

/// What stays true from item to item and from page to page.
struct Walker<'a> {
    pictures: &'a BTreeMap<u128, String>,
    /// The author's fields that are open, the innermost last.
    fields: Vec<Arc<Place>>,
    /// Artifacts that are open, the innermost last.
    asides: Vec<Aside>,
    /// How many reduced drawings are open.
    reduced: usize,
    /// How many texts for adults are open.
    adult: usize,
    sheet: String,
    leaf: LeafFacts,
    leaf_name: String,
    field_at: (i64, i64),
    drawn: Drawn,
}

/// An open artifact.
struct Aside {
    location: Location,
    /// True for head, foot and background of the page, which the frame prints.
    frame: bool,
    /// How many of the open fields do not reach into it.
    outside: usize,
}

/// Where an item stands: its frame's transformation and what is cut off.
#[derive(Clone, Copy)]
struct Stand {
    to_page: Transform,
    clip: Option<Area>,
}

impl<'a> Walker<'a> {
    fn new(pictures: &'a BTreeMap<u128, String>) -> Self {
        Self {
            pictures,
            fields: Vec::new(),
            asides: Vec::new(),
            reduced: 0,
            adult: 0,
            sheet: String::new(),
            leaf: LeafFacts::default(),
            leaf_name: String::new(),
            field_at: (0, 0),
            drawn: Drawn::default(),
        }
    }

    fn page(&mut self, number: u32, frame: &Frame) -> Drawn {
        let (width, height) = (um(frame.width().to_pt()), um(frame.height().to_pt()));
        self.drawn.page = LaidPage { number, width, height, ..LaidPage::default() };
        (self.leaf.said, self.leaf.start) = (false, false);
        self.frame(frame, Stand { to_page: Transform::identity(), clip: None });
        let mut drawn = std::mem::take(&mut self.drawn);
        drawn.sheet.clone_from(&self.sheet);
        drawn.page.leaf = match self.leaf.said {
            true => self.leaf_name.clone(),
            false => "blank".to_owned(),
        };
        (drawn.page.field_x, drawn.page.field_y) = self.field_at;
        drawn.leaf = self.leaf.clone();
        drawn
    }

    fn frame(&mut self, frame: &Frame, stand: Stand) {
        for (at, item) in frame.items() {
            match item {
                FrameItem::Group(group) => self.group(group, *at, stand),
                FrameItem::Text(text) => self.text(text, *at, stand),
                FrameItem::Shape(shape, _) => self.shape(shape, *at, stand),
                FrameItem::Image(image, size, _) => self.image(image, *size, *at, stand),
                FrameItem::Tag(tag) => self.tag(tag, *at, stand),
                FrameItem::Link(..) => {}
            }
        }
    }

    fn group(&mut self, group: &GroupItem, at: Point, stand: Stand) {
        let here = Transform::translate(at.x, at.y).pre_concat(group.transform);
        let to_page = stand.to_page.pre_concat(here);
        let clip = match &group.clip {
            None => stand.clip,
            Some(curve) => {
                let own = area(curve.bbox(None), to_page);
                let nothing = Area { left: 0, top: 0, right: 0, bottom: 0 };
                Some(stand.clip.map_or(own, |outer| outer.common(own).unwrap_or(nothing)))
            }
        };
        self.frame(&group.frame, Stand { to_page, clip });
    }

    fn text(&mut self, item: &TextItem, at: Point, stand: Stand) {
        let here = stand.to_page.pre_concat(Transform::translate(at.x, at.y));
        let start = Point::zero().transform(here);
        let laid = LaidText {
            text: item.text.to_string(),
            x: um(start.x.to_pt()),
            y: um(start.y.to_pt()),
            w: um(item.width().to_pt() * here.sx.get().hypot(here.ky.get())),
            size: (item.size.to_pt() * here.kx.get().hypot(here.sy.get()) * 100.0).round() as i64,
            font: item.font.font().info().family.as_str().to_owned(),
            missing: item.glyphs.iter().any(|g| g.id == 0),
            field: self.field().map(|place| (*place).clone()),
            reduced: self.reduced > 0,
        };
        let number = self.drawn.page.texts.len();
        if laid.missing {
            self.drawn.missing.insert(number, missing(item));
        }
        self.drawn.page.texts.push(laid);
        if let Some(ink) = of_text(item) {
            self.ink(What::Text(number), area(ink, here), stand);
        }
    }

    fn shape(&mut self, shape: &Shape, at: Point, stand: Stand) {
        // A line's ends may stand out by half its weight: near enough for a square cap, too.
        let half = shape.stroke.as_ref().map_or(Abs::zero(), |s| s.thickness / 2.0);
        let plain = shape.geometry.bbox(None);
        let out = Point::new(half, half);
        let room = Rect::new(at + plain.min - out, at + plain.max + out);
        if shape.fill.is_some() || shape.stroke.is_some() {
            self.ink(What::Shape, area(room, stand.to_page), stand);
        }
    }

    fn image(&mut self, image: &Image, size: Size, at: Point, stand: Stand) {
        let placed = area(Rect::from_pos_size(at, size), stand.to_page);
        let (data, pixels) = match image.kind() {
            ImageKind::Raster(raster) => {
                (Some(raster.data()), Some((raster.width(), raster.height())))
            }
            ImageKind::Svg(svg) => (Some(svg.data()), None),
            ImageKind::Pdf(_) => (None, None),
        };
        let known = data.and_then(|bytes| self.pictures.get(&hash128(bytes))).cloned();
        let name = known.or_else(|| self.marked(placed));
        self.drawn.page.images.push(LaidImage {
            x: placed.left,
            y: placed.top,
            w: placed.width(),
            h: placed.height(),
            pixels,
            name: name.unwrap_or_default(),
            field: self.field().map(|place| (*place).clone()),
        });
        self.ink(What::Image(self.drawn.page.images.len() - 1), placed, stand);
    }

    /// The name of a picture that was computed for this page: the template marked its place.
    fn marked(&self, placed: Area) -> Option<String> {
        let mark = self.drawn.page.marks.last().filter(|mark| mark.kind == PICTURE)?;
        let near = (mark.x - placed.left).abs().max((mark.y - placed.top).abs()) < 1_000;
        near.then(|| mark.name.clone())
    }

    fn ink(&mut self, what: What, room: Area, stand: Stand) {
        let Some(seen) = stand.clip.map_or(Some(room), |clip| clip.common(room)) else { return };
        self.drawn.inks.push(Ink {
            what,
            area: seen,
            field: self.field(),
            frame: self.asides.iter().any(|aside| aside.frame),
            reduced: self.reduced > 0,
            adult: self.adult > 0,
            upright: right_angled(stand.to_page),
        });
    }

    /// The innermost open field. Head and foot of a page stand between the two halves of a text
    /// that runs over the page's end, but do not belong to it.
    fn field(&self) -> Option<Arc<Place>> {
        let outside = self.asides.last().map_or(0, |aside| aside.outside);
        self.fields.get(outside..).and_then(<[_]>::last).cloned()
    }

    fn tag(&mut self, tag: &Tag, at: Point, stand: Stand) {
        match tag {
            Tag::End(location, ..) => {
                if self.asides.last().is_some_and(|open| open.location == *location) {
                    self.asides.pop();
                }
            }
            Tag::Start(content, _) => {
                if let Some(artifact) = content.to_packed::<ArtifactElem>() {
                    let kind = artifact.kind.get(typst::foundations::StyleChain::default());
                    let frame = kind != ArtifactKind::Other;
                    let outside = if frame { self.fields.len() } else { 0 };
                    self.asides.push(Aside { location: tag.location(), frame, outside });
                } else if let Some(data) = content.to_packed::<MetadataElem>()
                    && let Some(spot) = Spot::read(&data.value)
                {
                    self.spot(spot, at, stand);
                }
            }
        }
    }

    fn spot(&mut self, spot: Spot, at: Point, stand: Stand) {
        match spot {
            Spot::Sheet(id) => self.sheet = id,
            Spot::Start => self.leaf.start = true,
            Spot::Field(place) => self.fields.push(Arc::new(place)),
            Spot::FieldEnd => drop(self.fields.pop()),
            Spot::Reduced => self.reduced += 1,
            Spot::ReducedEnd => self.reduced = self.reduced.saturating_sub(1),
            Spot::Adult => self.adult += 1,
            Spot::AdultEnd => self.adult = self.adult.saturating_sub(1),
            Spot::Leaf { name, field_at, facts } => {
                self.leaf_name = name;
                self.field_at = field_at;
                self.leaf = LeafFacts { start: self.leaf.start, ..facts };
            }
            Spot::Mark { kind, name, width, height } => {
                let size = Size::new(Abs::pt(width), Abs::pt(height));
                let room = area(Rect::from_pos_size(at, size), stand.to_page);
                let mark = Mark {
                    kind,
                    name,
                    x: room.left,
                    y: room.top,
                    w: room.width(),
                    h: room.height(),
                };
                self.ink(What::Mark(self.drawn.page.marks.len()), room, stand);
                self.drawn.page.marks.push(mark);
            }
        }
    }
}
