//! The practice's own protocol: shown, changed, filled, written to a file and read from one.

use secundine_domain::message::Message;
use secundine_domain::protocol::{OwnChange, OwnProtocol, Protocol, misattributed};
use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, ErrorCode, ImportView, OwnView, Response};
use crate::hide;
use crate::practice::OpenPractice;
use crate::views;

/// Most bytes of a protocol file: four times what a published one has. An entry that carries it still fits into the inbox.
const FILE_MAX: usize = 32 * 1024;
/// Most errors of a file that are told.
const ERRORS: usize = 100;

impl Session {
    /// The published protocols, and the practice's own where one holds.
    pub(super) fn protocols(&mut self) -> Response {
        let hidden = self.hidden.is_some();
        let own = self.open().ok().map(|open| open.own());
        let held = own.and_then(|own| own.held.as_ref()).map(|held| match hidden {
            true => hide::own_protocol(&held.protocol),
            false => held.protocol.clone(),
        });
        let own = own.map(|own| views::own_state(&own.protocol));
        Response::Protocols { protocols: Protocol::published().iter().cloned().chain(held).collect(), own }
    }

    pub(super) fn own_protocol(&mut self) -> Result<Response, ApiError> {
        Ok(Response::OwnProtocol(view(self.really_open()?)?))
    }

    pub(super) fn change_own(&mut self, change: &OwnChange, now: &Stamp) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        let mut put = change.fields.iter().filter_map(|(slot, state)| Some((*slot, state.as_ref()?)));
        if put.any(|(slot, state)| misattributed(slot, state)) {
            return Err(ApiError::impossible(Message::new("protocol-file-other-number")));
        }
        open.change_own(change, now)?;
        Ok(Response::ChangeOwnProtocol(view(open)?))
    }

    pub(super) fn fill_own(&mut self, now: &Stamp) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        let change = open.own().protocol.filled();
        open.change_own(&change, now)?;
        Ok(Response::FillOwnProtocol(view(open)?))
    }

    pub(super) fn export_own(&mut self, now: &Stamp) -> Result<Response, ApiError> {
        let folder = self.paths.records.clone();
        let protocol = self.really_open()?.own().protocol.finish();
        let protocol = protocol.map_err(|_| ApiError::impossible(Message::new("error-own-open")))?;
        let name = format!("protocol-{}-{}.toml", now.date(), now.clock().replace(':', ""));
        let path = folder.join(name);
        let written = std::fs::create_dir_all(&folder).and_then(|()| std::fs::write(&path, protocol.file()));
        written.map_err(|_| ApiError::new(ErrorCode::NotSaved, "error-protocol-not-written"))?;
        Ok(Response::ExportOwnProtocol { path: path.to_string_lossy().into_owned() })
    }

    /// A file takes the place of what stands here; one with anything wrong changes nothing.
    pub(super) fn import_own(&mut self, text: &str, now: &Stamp) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        if text.len() > FILE_MAX {
            let most = Message::new("error-protocol-too-long").with("kilobytes", views::counted(FILE_MAX / 1024));
            return Err(ApiError::impossible(most));
        }
        let protocol = match Protocol::parse(text) {
            Ok(protocol) => protocol,
            Err(mut errors) => {
                let more = views::counted(errors.len().saturating_sub(ERRORS));
                errors.truncate(ERRORS);
                return Ok(Response::ImportOwnProtocol(ImportView { own: None, errors, more, changed: 0 }));
            }
        };
        let change = open.own().protocol.difference(&OwnProtocol::of(&protocol));
        open.change_own(&change, now)?;
        let own = Some(view(open)?);
        Ok(Response::ImportOwnProtocol(ImportView { own, errors: Vec::new(), more: 0, changed: change.count() }))
    }
}

fn view(open: &OpenPractice) -> Result<OwnView, ApiError> {
    Ok(views::own_protocol(open.own(), open.described(), &open.entries_of_practice()?))
}
