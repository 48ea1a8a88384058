//! The usual way to the network.

use std::io::{self, Read};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use secundine_sync::BucketError;
use ureq::http::header::{ACCEPT, AUTHORIZATION, CONTENT_LENGTH, CONTENT_TYPE};
use ureq::{Agent, Error, SendBody};

use super::{Answer, Courier, Errand, NoAnswer};

/// How long until it is said that there is no connection.
const CONNECT: Duration = Duration::from_secs(10);
/// How long the whole may take.
const WHOLE: Duration = Duration::from_secs(60);
/// More than any answer to a transaction takes, bytes.
const MOST: u64 = 8 << 20;
/// Media type of FHIR as JSON.
const FHIR: &str = "application/fhir+json";

/// HTTP/1.1, over TLS with the roots that browsers trust. One connection to each errand.
#[derive(Debug)]
pub struct Http(Agent);

impl Default for Http {
    fn default() -> Self {
        let config = Agent::config_builder()
            .http_status_as_error(false)
            .max_redirects(0)
            .max_redirects_will_error(false)
            .proxy(None)
            .timeout_resolve(Some(CONNECT))
            .timeout_connect(Some(CONNECT))
            .timeout_global(Some(WHOLE))
            .max_idle_connections(0)
            .user_agent("Secundine");
        Self(config.build().new_agent())
    }
}

impl Courier for Http {
    fn carry(&self, errand: &Errand) -> Result<Answer, NoAnswer> {
        let bearer = errand.token.map(|token| format!("Bearer {token}"));
        let response = match errand.body {
            Some(body) => {
                let mut request = self.0.post(errand.url).header(CONTENT_TYPE, FHIR).header("Prefer", "return=minimal");
                request = request.header(ACCEPT, FHIR).header(CONTENT_LENGTH, body.len());
                if let Some(bearer) = &bearer {
                    request = request.header(AUTHORIZATION, bearer);
                }
                request.send(SendBody::from_reader(&mut Counted { rest: body, sent: errand.sent }))
            }
            None => {
                let mut request = self.0.get(errand.url).header(ACCEPT, FHIR);
                if let Some(bearer) = &bearer {
                    request = request.header(AUTHORIZATION, bearer);
                }
                request.call()
            }
        };
        let response = response.map_err(|error| why(&error))?;
        let status = response.status().as_u16();
        let body = response.into_body().into_with_config().limit(MOST).read_to_vec().map_err(|error| why(&error))?;
        Ok(Answer { status, body })
    }
}

/// A body that tells how far it was read.
struct Counted<'a> {
    rest: &'a [u8],
    sent: &'a AtomicUsize,
}

impl Read for Counted<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let read = self.rest.read(into)?;
        self.sent.fetch_add(read, Ordering::Relaxed);
        Ok(read)
    }
}

fn why(error: &Error) -> NoAnswer {
    match secundine_sync::no_answer(error) {
        Some(BucketError::NoConnection) => NoAnswer::NoConnection,
        Some(BucketError::NotTrusted) => NoAnswer::NotTrusted,
        Some(BucketError::TooLarge) => NoAnswer::TooLong,
        _ => NoAnswer::Broken,
    }
}
