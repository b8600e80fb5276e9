//! What may be asked for, and the answers.

use super::fields::{Fields, Wish};
use super::gate::gate;
use super::order::Compared;
use super::remark::Remark;
use super::shelf::{Refused, Shelf, Shown};
use super::version::Look;
use super::watch::Caller;
use crate::ink::{Colour, Face, Faces, Palette};
use axum::extract::{DefaultBodyLimit, Path, State};
use axum::http::StatusCode;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_SECURITY_POLICY, CONTENT_TYPE, HeaderName};
use axum::middleware::from_fn_with_state;
use axum::response::sse::{Event, KeepAlive, Sse};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use serde::{Deserialize, Serialize};
use std::convert::Infallible;
use std::sync::Arc;
use tokio::sync::Semaphore;
use tokio::task::spawn_blocking;
use tokio_stream::wrappers::WatchStream;
use tokio_stream::{Stream, StreamExt};

/// Largest body of a request, in bytes.
const BODY_BYTES: usize = 64 << 10;

/// What every answer draws on.
pub(super) struct Desk {
    pub(super) shelf: Arc<Shelf>,
    pub(super) caller: Caller,
    /// What a request must call this server.
    pub(super) hosts: [String; 2],
    /// What a page of this run knows.
    pub(super) token: String,
    /// Names this run to pages of another.
    pub(super) run: String,
    /// Places for pages that listen.
    pub(super) listeners: Arc<Semaphore>,
}

/// All routes, behind the gate.
pub(super) fn routes(desk: Arc<Desk>) -> Router {
    Router::new()
        .route("/", get(page))
        .route("/page.css", get(|| async { text(STYLE, include_str!("page/page.css")) }))
        .route("/page.js", get(|| async { text(SCRIPT, include_str!("page/page.js")) }))
        .route("/sheets.js", get(|| async { text(SCRIPT, include_str!("page/sheets.js")) }))
        .route("/wishes.js", get(|| async { text(SCRIPT, include_str!("page/wishes.js")) }))
        .route("/palette.css", get(|| async { text(STYLE, palette()) }))
        .route("/mark.svg", get(|| async { text(PICTURE, include_str!("page/mark.svg")) }))
        .route("/lato/{face}", get(face))
        .route("/now", get(now))
        .route("/news", get(news))
        .route("/picture/{look}", get(picture))
        .route("/pdf/{version}/{sheet}", get(pdf))
        .route("/try", post(try_out))
        .route("/write", post(write))
        .layer(DefaultBodyLimit::max(BODY_BYTES))
        .layer(from_fn_with_state(Arc::clone(&desk), gate))
        .with_state(desk)
}

const PAGE: &str = include_str!("page/page.html");

/// Kinds of content.
const HTML: &str = "text/html; charset=utf-8";
const STYLE: &str = "text/css; charset=utf-8";
const SCRIPT: &str = "text/javascript; charset=utf-8";
const PICTURE: &str = "image/svg+xml";

fn text(kind: &'static str, body: impl IntoResponse) -> impl IntoResponse {
    ([(CONTENT_TYPE, kind)], body)
}

/// The page; who loads it may have missed a change, so the files are looked at.
async fn page(State(desk): State<Arc<Desk>>) -> impl IntoResponse {
    desk.caller.look();
    text(HTML, PAGE.replace("{token}", &desk.token))
}

/// The colours of the sheets as properties of the page.
fn palette() -> String {
    let palette = Palette::STANDARD;
    let colours = [
        ("ink", palette.ink),
        ("quiet", palette.quiet),
        ("accent", palette.accent),
        ("warm", palette.warm),
        ("rule", palette.rule),
        ("paper", palette.paper),
        ("tint", palette.tint),
        ("warm-tint", palette.warm_tint),
    ];
    let line = |(name, Colour { r, g, b })| format!("  --{name}: #{r:02x}{g:02x}{b:02x};\n");
    format!(":root {{\n{}}}\n", colours.into_iter().map(line).collect::<String>())
}

async fn face(Path(face): Path<String>) -> Response {
    let face = match face.as_str() {
        "regular.ttf" => Face::Regular,
        "bold.ttf" => Face::Bold,
        "italic.ttf" => Face::Italic,
        _ => return StatusCode::NOT_FOUND.into_response(),
    };
    text("font/ttf", Faces::bytes(face)).into_response()
}

/// The last good version, and what is wrong since then.
#[derive(Serialize)]
struct NowTold {
    file: String,
    shown: Option<ShownTold>,
    fault: Option<String>,
}

/// A version as the page needs it.
#[derive(Serialize)]
struct ShownTold {
    version: u64,
    title: String,
    language: &'static str,
    handouts: Vec<HandoutTold>,
    fields: Fields,
    remarks: Vec<Remark>,
}

#[derive(Serialize)]
struct HandoutTold {
    word: &'static str,
    name: String,
    /// Points.
    width: f32,
    height: f32,
    /// A picture for each page.
    pages: Vec<String>,
}

impl ShownTold {
    fn of(shown: &Shown) -> Self {
        let version = &shown.version;
        let handouts = version.handouts.iter().map(|handout| HandoutTold {
            word: handout.sheet.word(),
            name: handout.name.clone(),
            width: handout.size.0,
            height: handout.size.1,
            pages: handout.looks.iter().map(Look::to_string).collect(),
        });
        Self {
            version: shown.number,
            title: version.title.clone(),
            language: version.language,
            handouts: handouts.collect(),
            fields: version.fields.clone(),
            remarks: version.remarks.clone(),
        }
    }
}

async fn now(State(desk): State<Arc<Desk>>) -> Json<NowTold> {
    let now = desk.shelf.now();
    Json(NowTold {
        file: desk.shelf.file_name(),
        shown: now.shown.as_ref().map(ShownTold::of),
        fault: now.fault,
    })
}

/// Tells when [`now`] is another, beginning with how it is.
async fn news(State(desk): State<Arc<Desk>>) -> Response {
    let Ok(place) = Arc::clone(&desk.listeners).try_acquire_owned() else {
        let why = "too many pages of this preview are open\n";
        return (StatusCode::SERVICE_UNAVAILABLE, why).into_response();
    };
    let run = desk.run.clone();
    let events = WatchStream::new(desk.shelf.news()).map(move |news| {
        // Held as long as the page listens.
        let _ = &place;
        Ok(Event::default().event("news").data(format!("{run} {news}")))
    });
    told(events).into_response()
}

fn told(
    events: impl Stream<Item = Result<Event, Infallible>> + Send + 'static,
) -> impl IntoResponse {
    Sse::new(events).keep_alive(KeepAlive::default())
}

/// The picture of a page, by its look.
async fn picture(State(desk): State<Arc<Desk>>, Path(look): Path<String>) -> Response {
    let Some(look) = Look::read(&look) else { return StatusCode::NOT_FOUND.into_response() };
    let drawn = spawn_blocking(move || desk.shelf.picture(look)).await;
    match drawn.ok().flatten() {
        Some(picture) => {
            let policy = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";
            let headers = [(CONTENT_TYPE, PICTURE), (CONTENT_SECURITY_POLICY, policy)];
            (headers, picture.to_string()).into_response()
        }
        None => StatusCode::NOT_FOUND.into_response(),
    }
}

/// The file of a handout, for printing.
async fn pdf(
    State(desk): State<Arc<Desk>>,
    Path((version, sheet)): Path<(u64, String)>,
) -> Response {
    let version = desk.shelf.version(version);
    let word = sheet.strip_suffix(".pdf").unwrap_or_default();
    let Some(handout) = version.as_deref().and_then(|version| version.handout(word)) else {
        return (StatusCode::NOT_FOUND, "this version is gone; load the page again\n")
            .into_response();
    };
    let name = format!("inline; filename=\"{}.pdf\"", handout.sheet.word());
    // Viewers of browsers bring scripts and styles of their own.
    let headers: [(HeaderName, &str); 3] = [
        (CONTENT_TYPE, "application/pdf"),
        (CONTENT_DISPOSITION, &name),
        (CONTENT_SECURITY_POLICY, "frame-ancestors 'none'"),
    ];
    (headers, handout.pdf.to_vec()).into_response()
}

/// A wish, and the version that it changes.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    version: u64,
    wish: Wish,
}

/// What a wish comes to.
#[derive(Serialize)]
struct TriedTold {
    shown: ShownTold,
    order: Compared,
    /// Why it cannot be written into the file.
    unwritable: Option<String>,
}

async fn try_out(State(desk): State<Arc<Desk>>, Json(asked): Json<Asked>) -> Response {
    let tried = spawn_blocking(move || desk.shelf.try_out(asked.version, &asked.wish)).await;
    answer(tried.map(|tried| {
        tried.map(|tried| TriedTold {
            shown: ShownTold::of(&tried.shown),
            order: tried.compared,
            unwritable: tried.unwritable,
        })
    }))
}

async fn write(State(desk): State<Arc<Desk>>, Json(asked): Json<Asked>) -> Response {
    answer(spawn_blocking(move || desk.shelf.write(asked.version, &asked.wish)).await)
}

/// An answer in JSON, or why there is none in words.
fn answer<T: Serialize>(made: Result<Result<T, Refused>, tokio::task::JoinError>) -> Response {
    match made {
        Ok(Ok(made)) => Json(made).into_response(),
        Ok(Err(Refused::Outdated)) => {
            (StatusCode::GONE, "The lesson changed meanwhile.").into_response()
        }
        Ok(Err(Refused::Changed(why))) => (StatusCode::CONFLICT, why).into_response(),
        Ok(Err(Refused::Wrong(why))) => (StatusCode::UNPROCESSABLE_ENTITY, why).into_response(),
        Err(_) => StatusCode::INTERNAL_SERVER_ERROR.into_response(),
    }
}
