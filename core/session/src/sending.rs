//! Sending records to a server of HL7 FHIR R4: the port to the network, the letters, and what an answer means.

use std::sync::atomic::AtomicUsize;

mod address;
mod answer;
mod http;
mod letter;
mod outbox;

pub use http::Http;

pub(crate) use address::{base, kept_token};
pub(crate) use answer::{Again, Failure};
pub(crate) use letter::Letter;
pub(crate) use outbox::{Outbox, Run, Tried};

use answer::capable;
use secundine_domain::fact::Server;
use secundine_domain::message::Message;

/// What is asked of a server.
#[derive(Clone, Copy, Debug)]
pub struct Errand<'a> {
    /// Its whole address.
    pub url: &'a str,
    /// The bearer token that goes along.
    pub token: Option<&'a str>,
    /// FHIR as JSON that is posted; none where something is read.
    pub body: Option<&'a [u8]>,
    /// How many bytes of it were given to the network so far.
    pub sent: &'a AtomicUsize,
}

/// What a server answered, whatever it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The status of HTTP.
    pub status: u16,
    /// The body.
    pub body: Vec<u8>,
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoAnswer {
    /// The server was not reached: nothing was sent.
    NoConnection,
    /// Its certificate is none that is trusted: nothing was sent.
    NotTrusted,
    /// The connection broke or it took too long: whether something was kept is not known.
    Broken,
    /// The answer is longer than any should be.
    TooLong,
}

/// The way to the network. A shell may have a better one than the usual [`Http`].
pub trait Courier: Send + Sync {
    /// Carries an errand, waiting for its answer. Follows no redirection, so that no token goes to another server.
    ///
    /// # Errors
    /// Why there is no answer.
    fn carry(&self, errand: &Errand) -> Result<Answer, NoAnswer>;
}

/// Asks a server what it is.
pub(crate) fn try_server(server: &Server, courier: &dyn Courier) -> Result<Message, Message> {
    let url = format!("{}/metadata", server.address);
    let errand = Errand { url: &url, token: server.token.as_deref(), body: None, sent: &AtomicUsize::new(0) };
    match courier.carry(&errand) {
        Ok(answer) => capable(&answer),
        Err(none) => Err(Failure::from(none).said),
    }
}
