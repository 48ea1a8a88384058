//! The one way to the network: `object_store` asks, `ureq` carries.
//!
//! Each answer that means trouble becomes a [`BucketError`] here, since nobody above is told status and body together. What the
//! layer above reads for itself (nothing there, there already) passes.

use std::error::Error;
use std::fmt;
use std::io;
use std::time::{Duration, SystemTime};

use async_trait::async_trait;
use chrono::DateTime;
use http_body_util::BodyExt;
use object_store::ClientOptions;
use object_store::client::{
    HttpClient, HttpConnector, HttpError, HttpErrorKind, HttpRequest, HttpResponse, HttpResponseBody, HttpService,
};
use ureq::http::header::{AUTHORIZATION, CONTENT_LENGTH, DATE, RANGE};
use ureq::http::request::Parts;
use ureq::http::{HeaderValue, Method, Request, Response, StatusCode};
use ureq::{Agent, Body, Timeout};

use super::BucketError;

/// How long until it is said that there is no connection.
const CONNECT: Duration = Duration::from_secs(10);
/// How long nothing at all may move; a cluster that writes 40 MB to its disks answers within it.
const STILL: Duration = Duration::from_secs(30);
/// What a request may take beside its bytes.
const WHOLE: Duration = Duration::from_secs(60);
/// The slowest line that is waited for, bytes in a second.
const SLOWEST: u64 = 16 << 10;
/// What no request takes longer than; 40 MB on the slowest line take less.
const LONGEST: Duration = Duration::from_secs(60 * 60);
/// More than a page of a listing takes, bytes.
const LISTING: u64 = 16 << 20;
/// What a page of a listing is called.
const LISTED: &[u8] = b"<ListBucketResult";
/// How much of a complaint is read, bytes.
const COMPLAINT: u64 = 64 << 10;
/// A signature is refused when the clocks differ by more (S3: 15 minutes).
const CLOCKS: u64 = 15 * 60;

/// How many bytes an answer may have; goes with a request.
#[derive(Clone, Copy, Debug)]
pub(super) struct Most(pub u64);

/// The range begins where nothing is any more.
#[derive(Debug)]
pub(super) struct Beyond;

impl fmt::Display for Beyond {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("nothing lies in this range")
    }
}

impl Error for Beyond {}

/// HTTP/1.1, over TLS with the roots that browsers trust. No proxy, no redirection: a key would go to whoever is pointed to.
#[derive(Clone)]
pub(super) struct Wire {
    agent: Agent,
    /// Goes with each request that has not signed itself.
    authorization: Option<HeaderValue>,
}

impl fmt::Debug for Wire {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Wire")
    }
}

impl Wire {
    pub(super) fn new(authorization: Option<HeaderValue>) -> Self {
        Self::waiting(authorization, STILL)
    }

    fn waiting(authorization: Option<HeaderValue>, still: Duration) -> Self {
        let config = Agent::config_builder()
            .http_status_as_error(false)
            .allow_non_standard_methods(true)
            .max_redirects(0)
            .max_redirects_will_error(false)
            .proxy(None)
            .timeout_resolve(Some(CONNECT))
            .timeout_connect(Some(CONNECT))
            .timeout_per_read(Some(still))
            .timeout_per_write(Some(still))
            .max_idle_connections_per_host(super::store::AHEAD)
            .user_agent("Secundine");
        Self { agent: config.build().new_agent(), authorization }
    }

    fn carry(&self, mut parts: Parts, bytes: &[u8]) -> Result<HttpResponse, HttpError> {
        let asked = Asked::of(&parts);
        if let Some(authorization) = &self.authorization {
            parts.headers.insert(AUTHORIZATION, authorization.clone());
        }
        let moved = asked.most.unwrap_or(0).saturating_add(bytes.len() as u64);
        let whole = Some((WHOLE + Duration::from_secs(moved / SLOWEST)).min(LONGEST));
        let sends = parts.method == Method::PUT;
        let request = Request::from_parts(parts, bytes);
        let answer = if sends {
            self.agent.run(self.agent.configure_request(request).timeout_global(whole).build())
        } else {
            self.agent.run(self.agent.configure_request(request.map(|_| ())).timeout_global(whole).build())
        };
        answered(answer.map_err(|error| failed(&error))?, &asked)
    }
}

/// What an answer is read by.
struct Asked {
    most: Option<u64>,
    /// It is a page of a listing of S3.
    lists: bool,
    /// It is a part.
    ranged: bool,
    /// It is that a folder be made.
    makes: bool,
}

impl Asked {
    fn of(parts: &Parts) -> Self {
        Self {
            most: parts.extensions.get::<Most>().map(|most| most.0),
            lists: parts.uri.query().is_some_and(|query| query.contains("list-type")),
            ranged: parts.headers.contains_key(RANGE),
            makes: parts.method.as_str() == "MKCOL",
        }
    }
}

#[async_trait]
impl HttpService for Wire {
    async fn call(&self, request: HttpRequest) -> Result<HttpResponse, HttpError> {
        let (parts, body) = request.into_parts();
        let bytes = body.collect().await?.to_bytes();
        let wire = self.clone();
        let carried = tokio::task::spawn_blocking(move || wire.carry(parts, &bytes)).await;
        carried.unwrap_or_else(|stopped| Err(HttpError::new(HttpErrorKind::Unknown, stopped)))
    }
}

impl HttpConnector for Wire {
    fn connect(&self, _: &ClientOptions) -> object_store::Result<HttpClient> {
        Ok(HttpClient::new(self.clone()))
    }
}

/// The answer whole, or why it is none.
fn answered(response: Response<Body>, asked: &Asked) -> Result<HttpResponse, HttpError> {
    let most = asked.most.unwrap_or(LISTING);
    let (mut parts, body) = response.into_parts();
    // Another made it meanwhile.
    if asked.makes && parts.status == StatusCode::METHOD_NOT_ALLOWED {
        parts.status = StatusCode::CREATED;
    }
    if parts.status.is_success() {
        if body.content_length().is_some_and(|length| length > most) {
            return Err(trouble(BucketError::TooLarge));
        }
        let bytes = body.into_with_config().limit(most.saturating_add(1)).read_to_vec().map_err(|error| failed(&error))?;
        if bytes.len() as u64 > most {
            return Err(trouble(BucketError::TooLarge));
        }
        // Any page would be read as an empty one.
        if asked.lists && !bytes.windows(LISTED.len()).any(|part| part == LISTED) {
            return Err(trouble(BucketError::Broken("no listing came".to_owned())));
        }
        // Some servers give nothing for a part of nothing, instead of saying that there is none.
        if asked.ranged && bytes.is_empty() {
            return Err(HttpError::new(HttpErrorKind::Unknown, Beyond));
        }
        // One that came in pieces does not tell its length, which is asked for above.
        parts.headers.entry(CONTENT_LENGTH).or_insert_with(|| HeaderValue::from(bytes.len()));
        return Ok(HttpResponse::from_parts(parts, HttpResponseBody::from(bytes)));
    }
    let complaint = body.into_with_config().limit(COMPLAINT).read_to_vec().unwrap_or_default();
    let complaint = String::from_utf8_lossy(&complaint);
    match complained(parts.status, &complaint, asked.lists, clocks_differ(parts.headers.get(DATE))) {
        Some(why) => Err(trouble(why)),
        None if parts.status == StatusCode::RANGE_NOT_SATISFIABLE => Err(HttpError::new(HttpErrorKind::Unknown, Beyond)),
        None => Ok(HttpResponse::from_parts(parts, HttpResponseBody::from(Vec::new()))),
    }
}

/// What a status with its text means; nothing where it is read above, which is not done for a page of a listing.
fn complained(status: StatusCode, text: &str, lists: bool, clocks_differ: bool) -> Option<BucketError> {
    let code = status.as_u16();
    let says = |word: &str| text.contains(word);
    Some(match code {
        404 if lists || says("NoSuchBucket") => BucketError::NoBucket,
        // There, not there, made already: read above.
        304 | 404 | 405 | 409 | 412 | 416 if !lists => return None,
        400 | 403 if clocks_differ || says("RequestTimeTooSkewed") => BucketError::Clock,
        507 => BucketError::Full,
        400..=599 if says("uota") || says("StorageFull") || says("InsufficientStorage") => BucketError::Full,
        408 | 425 | 429 | 500 | 502..=504 | 508..=599 => BucketError::Busy(code),
        _ => BucketError::Refused(code),
    })
}

/// Whether the clock of the one who answers and ours differ by more than a signature may.
fn clocks_differ(date: Option<&HeaderValue>) -> bool {
    let theirs = date.and_then(|date| DateTime::parse_from_rfc2822(date.to_str().ok()?).ok());
    let ours = SystemTime::now().duration_since(SystemTime::UNIX_EPOCH).map_or(0, |since| since.as_secs());
    theirs.is_some_and(|theirs| ours.abs_diff(theirs.timestamp().max(0).unsigned_abs()) > CLOCKS)
}

/// What ended it: only a connection that broke is tried once more, since the one taken from before may have been closed.
fn failed(error: &ureq::Error) -> HttpError {
    match no_answer(error) {
        None => HttpError::new(HttpErrorKind::Request, BucketError::Slow),
        Some(why) => trouble(why),
    }
}

fn trouble(why: BucketError) -> HttpError {
    HttpError::new(HttpErrorKind::Unknown, why)
}

/// Why a request came to no answer; nothing for a connection that broke.
#[must_use]
pub fn no_answer(error: &ureq::Error) -> Option<BucketError> {
    Some(match error {
        ureq::Error::HostNotFound | ureq::Error::ConnectionFailed | ureq::Error::Timeout(Timeout::Resolve | Timeout::Connect) => {
            BucketError::NoConnection
        }
        ureq::Error::Timeout(_) => BucketError::Slow,
        ureq::Error::Rustls(_) | ureq::Error::Tls(_) => BucketError::NotTrusted,
        ureq::Error::BodyExceedsLimit(_) => BucketError::TooLarge,
        ureq::Error::Io(error) => match error.kind() {
            io::ErrorKind::ConnectionRefused
            | io::ErrorKind::NetworkUnreachable
            | io::ErrorKind::HostUnreachable
            | io::ErrorKind::AddrNotAvailable
            | io::ErrorKind::NetworkDown => BucketError::NoConnection,
            // What the handshake complains of comes so.
            io::ErrorKind::InvalidData => BucketError::NotTrusted,
            io::ErrorKind::TimedOut | io::ErrorKind::WouldBlock => BucketError::Slow,
            // Nobody to ask where a host is has no kind of its own.
            _ if error.to_string().contains("lookup address") => BucketError::NoConnection,
            _ => return None,
        },
        other => BucketError::Broken(other.to_string()),
    })
}

#[cfg(test)]
mod tests {
    use std::io::Write;
    use std::net::TcpListener;
    use std::thread;

    use super::super::why::found;
    use super::*;

    /// What comes of a server that says so much and then nothing more.
    fn said(text: &'static str) -> BucketError {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        thread::spawn(move || {
            let (mut stream, _) = listener.accept().unwrap();
            stream.write_all(text.as_bytes()).unwrap();
            thread::park();
        });
        let request = Request::get(format!("http://{address}/a")).body(()).unwrap();
        let wire = Wire::waiting(None, Duration::from_millis(200));
        let error = wire.carry(request.into_parts().0, &[]).unwrap_err();
        found::<BucketError>(&error).unwrap().clone()
    }

    #[test]
    fn a_name_that_nobody_can_look_up_is_no_connection() {
        let asked = io::Error::other("failed to lookup address information: Temporary failure in name resolution");
        assert_eq!(no_answer(&ureq::Error::Io(asked)), Some(BucketError::NoConnection));
        assert_eq!(no_answer(&ureq::Error::Io(io::ErrorKind::ConnectionReset.into())), None);
    }

    #[test]
    fn a_line_on_which_nothing_moves_is_given_up() {
        assert_eq!(said(""), BucketError::Slow);
        assert_eq!(said("HTTP/1.1 200 OK\r\nContent-Length: 9\r\n\r\nabc"), BucketError::Slow, "in the middle");
    }
}
