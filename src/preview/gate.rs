//! Who may ask. The page is for the browser of this machine: a page of the web that has its
//! own name point here (DNS rebinding), or that posts across, is refused.

use super::routes::Desk;
use axum::extract::{Request, State};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, CONTENT_TYPE, HOST, HeaderName, ORIGIN,
    REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use std::fmt::Write;
use std::sync::Arc;

/// Who sends it, by the browser's own word; a page cannot set it.
const SITE: HeaderName = HeaderName::from_static("sec-fetch-site");
/// What only a page of this run can know.
pub(super) const TOKEN: HeaderName = HeaderName::from_static("x-puddlebook-token");

/// Nothing from anywhere but here.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; \
                      img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; \
                      frame-ancestors 'none'";

/// Lets a request through, or refuses it; every answer gets the same headers.
pub(super) async fn gate(State(desk): State<Arc<Desk>>, request: Request, next: Next) -> Response {
    let mut response = match refusal(&request, &desk) {
        Some((status, why)) => (status, why).into_response(),
        None => next.run(request).await,
    };
    let headers = response.headers_mut();
    let fixed = [
        (CACHE_CONTROL, "no-store"),
        (X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (REFERRER_POLICY, "no-referrer"),
        (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
        (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    ];
    for (name, value) in fixed {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers.entry(CONTENT_SECURITY_POLICY).or_insert(HeaderValue::from_static(POLICY));
    response
}

fn refusal(request: &Request, desk: &Desk) -> Option<(StatusCode, &'static str)> {
    let headers = request.headers();
    let host = only(headers, &HOST);
    if !host.is_some_and(|host| desk.hosts.iter().any(|known| known == host))
        || request.uri().authority().is_some_and(|named| Some(named.as_str()) != host)
    {
        return Some((StatusCode::MISDIRECTED_REQUEST, "this is no address of the preview\n"));
    }
    if headers.contains_key(SITE)
        && !only(headers, &SITE).is_some_and(|site| ["same-origin", "none"].contains(&site))
    {
        return Some((StatusCode::FORBIDDEN, "another site may not ask\n"));
    }
    let origin = only(headers, &ORIGIN);
    let from_here = origin.and_then(|origin| origin.strip_prefix("http://")) == host;
    if headers.contains_key(ORIGIN) && !from_here {
        return Some((StatusCode::FORBIDDEN, "another origin may not ask\n"));
    }
    if request.method() == Method::GET || request.method() == Method::HEAD {
        return None;
    }
    if origin.is_none() {
        return Some((StatusCode::FORBIDDEN, "a change must say where it comes from\n"));
    }
    if only(headers, &CONTENT_TYPE) != Some("application/json") {
        return Some((StatusCode::UNSUPPORTED_MEDIA_TYPE, "a change is written in JSON\n"));
    }
    let token = only(headers, &TOKEN).unwrap_or_default();
    if !same(token.as_bytes(), desk.token.as_bytes()) {
        return Some((StatusCode::FORBIDDEN, "this page belongs to another run; load it again\n"));
    }
    None
}

/// The value of a header that is there once.
fn only<'a>(headers: &'a HeaderMap, name: &HeaderName) -> Option<&'a str> {
    let mut values = headers.get_all(name).iter();
    let value = values.next()?.to_str().ok()?;
    values.next().is_none().then_some(value)
}

/// Whether both are equal, in a time that does not tell where they differ.
fn same(one: &[u8], other: &[u8]) -> bool {
    one.len() == other.len() && one.iter().zip(other).fold(0, |sum, (a, b)| sum | (a ^ b)) == 0
}

/// A word that nobody can guess.
pub(super) fn secret() -> Result<String, getrandom::Error> {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes)?;
    Ok(bytes.iter().fold(String::new(), |mut text, byte| {
        // Writing to a text does not fail.
        let _ = write!(text, "{byte:02x}");
        text
    }))
}
