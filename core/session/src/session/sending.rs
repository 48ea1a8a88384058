//! Sending: what is asked for is written down; what is sent is taken out, carried by a thread of its own, and settled.

use secundine_domain::entry::BirthId;
use secundine_domain::fact::Server;
use secundine_domain::message::Message;
use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, ErrorCode, FailureView, Response, SendingState, SendingView, ServerView, TakenView, TriedView};
use crate::clock::Clock;
use crate::practice::OpenPractice;
use crate::sending::{Again, Failure, Letter, Run, Tried, base, kept_token};
use crate::views::counted;

impl Session {
    pub(super) fn server(&mut self) -> Result<ServerView, ApiError> {
        let server = self.open()?.server().cloned();
        let token = server.as_ref().is_some_and(|server| server.token.is_some());
        let tried = match &self.outbox.tried {
            Tried::Not => None,
            Tried::Asked | Tried::Going => Some(TriedView::Going),
            Tried::Told(told) => {
                let (Ok(said) | Err(said)) = told;
                Some(TriedView::Told { said: said.clone(), well: told.is_ok() })
            }
        };
        Ok(ServerView { address: server.map(|server| server.address), token, tried })
    }

    pub(super) fn set_server(&mut self, typed: &str, token: Option<String>, now: &Stamp) -> Result<ServerView, ApiError> {
        let open = self.really_open()?;
        let server = match typed.trim() {
            "" => None,
            typed => {
                let address = base(typed)?;
                let token = kept_token(token, &address, open.server())?;
                Some(Server { address, token })
            }
        };
        if open.server() != server.as_ref() {
            open.set_server(server, now)?;
            self.outbox.forget();
        }
        self.server()
    }

    pub(super) fn try_server(&mut self) -> Result<ServerView, ApiError> {
        served(self.really_open()?)?;
        if !matches!(self.outbox.tried, Tried::Going) {
            self.outbox.tried = Tried::Asked;
        }
        self.server()
    }

    /// How a birth stands with the server.
    pub(super) fn sending(&mut self, birth: BirthId) -> Result<SendingView, ApiError> {
        let open = self.open()?;
        let taken = open.last_sent(birth)?.map(|sent| TakenView {
            date: sent.date,
            clock: sent.clock,
            server: sent.server,
            version: sent.version,
            current: sent.current,
        });
        let (server, waits) = (open.server().map(|server| server.address.clone()), open.waiting().contains(&birth));
        let state = match (self.outbox.going(birth), waits) {
            (Some(going), _) => {
                let (sent, of) = going.far();
                SendingState::Going { sent, of }
            }
            (None, true) => SendingState::Waiting { failure: self.failure(birth) },
            (None, false) => SendingState::NotAsked,
        };
        Ok(SendingView { server, state, taken })
    }

    fn failure(&self, birth: BirthId) -> Option<FailureView> {
        let failed = self.outbox.failed(birth)?;
        let Failure { said, entries, more, again } = failed.failure.clone();
        let (date, clock, more) = (failed.at.date(), failed.at.clock(), counted(more));
        Some(FailureView { date, clock, said, entries, more, again: again != Again::ByHand })
    }

    pub(super) fn ask_sending(&mut self, birth: BirthId, now: &Stamp) -> Result<SendingView, ApiError> {
        let open = self.really_open()?;
        served(open)?;
        open.let_wait(birth, true, now)?;
        self.sending(birth)
    }

    /// What is on its way already is not called back: if the server takes it, that is written down.
    pub(super) fn take_back_sending(&mut self, birth: BirthId, now: &Stamp) -> Result<SendingView, ApiError> {
        self.really_open()?.let_wait(birth, false, now)?;
        self.outbox.clear(birth);
        self.sending(birth)
    }

    /// Puts into the row what is to be sent now.
    pub(super) fn send_waiting(
        &mut self,
        birth: Option<BirthId>,
        language: Option<String>,
        now: &Stamp,
    ) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        let waiting: Vec<BirthId> = open.waiting().iter().copied().collect();
        let served = open.server().is_some();
        self.outbox.language = language.unwrap_or_default();
        for one in waiting.iter().filter(|_| served) {
            if birth.map_or_else(|| self.outbox.is_due(*one, now), |birth| birth == *one) {
                self.outbox.put(*one);
            }
        }
        Ok(Response::SendWaiting { waiting: counted(waiting.len()) })
    }

    /// What now has to run in a thread of its own.
    pub(crate) fn runs_to_begin(&mut self) -> Vec<Run> {
        self.outbox.begin()
    }

    /// That a thread could not be begun.
    pub(crate) fn not_begun(&mut self, run: Run) {
        self.outbox.end(run);
    }

    /// The next letter of the row; none where nothing is left, or the practice was closed.
    pub(crate) fn next_letter(&mut self) -> Option<Letter> {
        let now = self.clock.now();
        while let Some(birth) = self.outbox.next() {
            let Some(open) = self.practice.as_mut() else { continue };
            let Some(server) = open.server().cloned().filter(|_| open.waiting().contains(&birth)) else { continue };
            match Letter::of(open, birth, server, &self.outbox.language, now.clone()) {
                Ok(letter) => {
                    self.outbox.set_off(&letter);
                    return Some(letter);
                }
                Err(error) => self.outbox.fail(birth, error.into(), now.clone()),
            }
        }
        self.outbox.end(Run::Send);
        None
    }

    /// Writes down what became of a letter. A practice that was closed meanwhile learns nothing of it: the birth waits still, and
    /// sent once more it doubles nothing.
    pub(crate) fn settle(&mut self, letter: &Letter, told: Result<(), Failure>) {
        self.outbox.arrived();
        let now = self.clock.now();
        let Some(open) = self.practice.as_mut() else { return };
        let settled = told.and_then(|()| Ok(open.sent(letter.birth, &letter.server, &letter.version, &now)?));
        match settled {
            Ok(()) => self.outbox.clear(letter.birth),
            Err(failure) => self.outbox.fail(letter.birth, failure, now),
        }
    }

    /// The server that is to be asked what it is.
    pub(crate) fn server_to_try(&mut self) -> Option<Server> {
        let server = self.practice.as_ref().and_then(|open| open.server().cloned());
        if server.is_none() {
            self.outbox.end(Run::Try);
        }
        server
    }

    /// Keeps what a server told of itself, unless it was closed or set anew meanwhile.
    pub(crate) fn tried(&mut self, server: &Server, told: Result<Message, Message>) {
        let same = self.practice.as_ref().and_then(OpenPractice::server) == Some(server);
        if same && matches!(self.outbox.tried, Tried::Going) {
            self.outbox.tried = Tried::Told(told);
        }
    }
}

fn served(open: &OpenPractice) -> Result<(), ApiError> {
    match open.server() {
        Some(_) => Ok(()),
        None => Err(ApiError::new(ErrorCode::NotFound, "error-no-server")),
    }
}
