//! What stands on the command line.

/// What the program can do.
pub const USAGE: &str = "Usage, with the passphrase on standard input:
  secundine verify FOLDER [--hash DIGITS]    check the practice in this folder
  secundine verify FILE [--hash DIGITS]      check a backup, or an archive (.jsonl, which needs no passphrase)
  secundine export FOLDER                    list the births
  secundine export FOLDER BIRTH KIND FILE    write a file about a birth, named by its id or its label
  secundine backup FOLDER FILE               make a backup, and read it back
  secundine restore FILE FOLDER              put a backup into a folder that has no practice, or add what is not there
  secundine salvage FOLDER                   build a damaged practice anew from all that can be read
Without a passphrase:
  secundine export RECORD KIND FILE          write the same from a record that was given out of hand: a bundle of FHIR (.json) or
                                             an archive (.jsonl)
  secundine rehearse FOLDER [SCENARIO]       play an invented birth and write its files into this folder

KIND      record, transfer, laboratory, family, parents (PDF), csv, calendar, entries, fhir
SCENARIO  quiet-night, slow-placenta, brisk-bleeding, twins
  --hash DIGITS    as printed on a record, 16 digits or more: says whether the entries are those of the paper
  --language TAG   language of the file: en, es, fr
  --placenta N     which placenta a paper is about: the number of its first baby; 1 if it is not said
  --photos         with fhir: the photographs go along
  --help           this text

Exit code: 0 all is well; 1 something does not fit, is missing or was not taken in; 2 it could not be done.
Verify a copy of a folder: to read the database folds its log into it, which changes the files but no entry.";

/// Words and options, in any order.
#[derive(Default)]
pub struct Args {
    /// What is no option.
    pub words: Vec<String>,
    /// The version on a paper, or its first digits.
    pub hash: Option<String>,
    /// BCP 47 tag.
    pub language: Option<String>,
    /// First baby of a placenta.
    pub placenta: Option<u8>,
    /// Whether photographs go along.
    pub photos: bool,
    /// Only the usage is asked for.
    pub help: bool,
}

impl Args {
    /// Reads them; none for an option that is not known or lacks its value.
    pub fn read(mut args: impl Iterator<Item = String>) -> Option<Self> {
        let mut read = Self::default();
        while let Some(arg) = args.next() {
            match arg.as_str() {
                "--help" | "-h" => read.help = true,
                "--photos" => read.photos = true,
                "--hash" => read.hash = Some(args.next()?),
                "--language" => read.language = Some(args.next()?),
                "--placenta" => read.placenta = Some(args.next()?.parse().ok()?),
                other if other.starts_with("--") => return None,
                _ => read.words.push(arg),
            }
        }
        Some(read)
    }
}
