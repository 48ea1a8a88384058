//! What is known here before a birth.

use secundine_domain::fact::Fact;
use secundine_domain::time::Stamp;
use secundine_store::free_bytes;

use super::Session;
use crate::api::{ApiError, DeviceTold, Response};
use crate::views::{Known, before_birth};

impl Session {
    pub(super) fn before_birth(&mut self, device: &DeviceTold, now: &Stamp) -> Result<Response, ApiError> {
        let open = self.really_open()?;
        let (clock, protocol) = (open.clock_since(now)?, open.first_protocol().as_ref().map(Fact::describe));
        let known = Known {
            free: free_bytes(&self.paths.data),
            clock,
            device_key: self.keys.by_device(),
            backup: self.last_backup().map(|line| line.made),
            protocol,
        };
        Ok(Response::BeforeBirth { things: before_birth(device, &known, now) })
    }
}
