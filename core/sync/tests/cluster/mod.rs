//! A cluster of Garage on loopback: `tests/garage/cluster.py` in a process of its own.

#![allow(dead_code, clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::io::{BufRead, BufReader, Write};
use std::path::PathBuf;
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};

use secundine_sync::{Bucket, Place, Secret, open};
use serde_json::Value;

/// A cluster, until it is dropped.
pub struct Cluster {
    process: Child,
    orders: Option<ChildStdin>,
    answers: BufReader<ChildStdout>,
    pub known: Value,
}

impl Cluster {
    pub fn start() -> Self {
        let root = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."));
        let garage = std::env::var_os("SECUNDINE_GARAGE").map_or_else(|| root.join("target/tools/bin/garage"), PathBuf::from);
        let mut command = Command::new("python3");
        command.arg(root.join("tests/garage/cluster.py")).arg(garage).stdin(Stdio::piped()).stdout(Stdio::piped());
        let mut process = command.spawn().unwrap();
        let (orders, answers) = (process.stdin.take(), BufReader::new(process.stdout.take().unwrap()));
        let mut this = Self { process, orders, answers, known: Value::Null };
        this.known = this.answer();
        this
    }

    fn answer(&mut self) -> Value {
        let mut line = String::new();
        self.answers.read_line(&mut line).unwrap();
        serde_json::from_str(&line).unwrap()
    }

    pub fn order(&mut self, order: &str) -> Value {
        writeln!(self.orders.as_ref().unwrap(), "{order}").unwrap();
        self.answer()
    }

    /// The bucket through one of the nodes, by a key.
    pub fn through(&self, node: usize, key: &Value, change: impl FnOnce(&mut [String; 5])) -> Box<dyn Bucket> {
        let text = |value: &Value| value.as_str().unwrap().to_owned();
        let known = &self.known;
        let endpoint = text(&known["endpoints"][node - 1]);
        let mut all = [endpoint, text(&known["region"]), text(&known["bucket"]), text(&key["key"]), text(&key["secret"])];
        change(&mut all);
        let [endpoint, region, bucket, key, secret] = all;
        open(&Place::S3 { endpoint, region, bucket, key, secret: Secret(secret) }).unwrap()
    }

    pub fn node(&self, node: usize) -> Box<dyn Bucket> {
        self.through(node, &self.known, |_| ())
    }
}

impl Drop for Cluster {
    fn drop(&mut self) {
        drop(self.orders.take());
        let _ = self.process.wait();
    }
}
