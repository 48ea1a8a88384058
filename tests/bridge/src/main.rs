//! The page in an ordinary browser, for development and tests only: a loopback server around the same one call.
//!
//! `secundine-bridge DATA RECORDS UI` prints the address to open. The address carries a bearer made for this run; without
//! it, or with another Host or Origin, nothing is answered.

#![allow(clippy::print_stdout, reason = "a program for the terminal")]

use std::collections::HashMap;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use axum::Router;
use axum::body::Bytes;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::middleware::{Next, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use axum::routing::post;
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session, SharedSession, panics_tell_only_where};

/// The same rule as the window's, but for the address of the call.
const CSP: &str = "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' blob:; media-src 'self' blob:; \
                   font-src 'self'; connect-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'";

struct Bridge {
    session: SharedSession,
    page: HashMap<String, (&'static str, Vec<u8>)>,
    host: String,
    bearer: String,
}

#[tokio::main(flavor = "current_thread")]
async fn main() -> Result<(), Box<dyn Error>> {
    panics_tell_only_where();
    let mut args = std::env::args_os().skip(1).map(PathBuf::from);
    let (Some(data), Some(records), Some(ui)) = (args.next(), args.next(), args.next()) else {
        return Err("usage: secundine-bridge DATA RECORDS UI".into());
    };
    let session = Session::new(Paths { data, records }, Arc::new(SystemClock::new()));
    let mut page = HashMap::new();
    load(&ui, &ui, &mut page)?;
    let listener = tokio::net::TcpListener::bind(("127.0.0.1", 0)).await?;
    let host = listener.local_addr()?.to_string();
    let mut secret = [0_u8; 32];
    getrandom::fill(&mut secret)?;
    let bearer = hex::encode(secret);
    println!("http://{host}/#token={bearer}");
    let bridge = Arc::new(Bridge { session: SharedSession::new(session), page, host, bearer });
    let router = Router::new()
        .route("/call", post(call))
        .fallback(file)
        .layer(from_fn_with_state(Arc::clone(&bridge), only_from_here))
        .with_state(bridge);
    Ok(axum::serve(listener, router).await?)
}

/// Reads the built page once; nothing else of the disk can be asked for.
fn load(root: &Path, folder: &Path, page: &mut HashMap<String, (&'static str, Vec<u8>)>) -> Result<(), Box<dyn Error>> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            load(root, &path, page)?;
            continue;
        }
        let kind = match path.extension().and_then(|extension| extension.to_str()) {
            Some("html") => "text/html; charset=utf-8",
            Some("js") => "text/javascript; charset=utf-8",
            Some("css") => "text/css; charset=utf-8",
            Some("svg") => "image/svg+xml",
            Some("woff2") => "font/woff2",
            Some("png") => "image/png",
            _ => "application/octet-stream",
        };
        let name = path.strip_prefix(root)?.to_string_lossy().into_owned();
        page.insert(format!("/{name}"), (kind, std::fs::read(&path)?));
    }
    Ok(())
}

/// Another site's page, or a name that was made to point here, gets no answer.
async fn only_from_here(State(bridge): State<Arc<Bridge>>, request: Request, next: Next) -> Response {
    if !from_here(request.headers(), &bridge.host) {
        return StatusCode::FORBIDDEN.into_response();
    }
    let mut response = next.run(request).await;
    response.headers_mut().insert(header::CONTENT_SECURITY_POLICY, HeaderValue::from_static(CSP));
    response.headers_mut().insert(header::CACHE_CONTROL, HeaderValue::from_static("no-store"));
    response
}

fn from_here(headers: &HeaderMap, host: &str) -> bool {
    let named = |name| headers.get(name).map(HeaderValue::as_bytes);
    let origin = format!("http://{host}");
    named(header::HOST) == Some(host.as_bytes()) && named(header::ORIGIN).is_none_or(|from| from == origin.as_bytes())
}

async fn call(State(bridge): State<Arc<Bridge>>, headers: HeaderMap, body: Bytes) -> Response {
    let bearer =
        headers.get(header::AUTHORIZATION).and_then(|value| value.to_str().ok()).and_then(|value| value.strip_prefix("Bearer "));
    if bearer != Some(bridge.bearer.as_str()) {
        return StatusCode::UNAUTHORIZED.into_response();
    }
    let json = [(header::CONTENT_TYPE, "application/json")];
    match bridge.session.call_json(&String::from_utf8_lossy(&body)) {
        Ok(answer) => (json, answer).into_response(),
        Err(error) => (StatusCode::UNPROCESSABLE_ENTITY, json, error).into_response(),
    }
}

async fn file(State(bridge): State<Arc<Bridge>>, request: Request) -> Response {
    let path = match request.uri().path() {
        "/" => "/index.html",
        path => path,
    };
    match bridge.page.get(path) {
        Some((kind, bytes)) => ([(header::CONTENT_TYPE, *kind)], bytes.clone()).into_response(),
        None => StatusCode::NOT_FOUND.into_response(),
    }
}
