//! Vectors of the key files.

use age::secrecy::SecretString;
use age::{armor, scrypt, x25519};
use secundine_store::ExposeSecret;
use serde_json::{Value, json};
use std::io::Write;

use super::seal::flipped;

const KEY: &str = "000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f";
const PASSPHRASE: &str = "seven quiet herons";

/// Cheaper than the program's own, for the sake of the tests.
fn by_passphrase(passphrase: &str, holds: &str) -> Vec<u8> {
    let mut recipient = scrypt::Recipient::new(SecretString::from(passphrase.to_owned()));
    recipient.set_work_factor(10);
    age::encrypt(&recipient, holds.as_bytes()).unwrap()
}

/// The first place of this text.
fn place(file: &[u8], text: &str) -> usize {
    file.windows(text.len()).position(|part| part == text.as_bytes()).unwrap()
}

fn replaced(file: &[u8], text: &str, with: &str) -> Vec<u8> {
    let at = place(file, text);
    [&file[..at], with.as_bytes(), &file[at + text.len()..]].concat()
}

/// Where the header's lines begin, and after them what age calls the payload.
fn lines(file: &[u8]) -> Vec<usize> {
    let mut begin = vec![0];
    while begin.len() < 5 {
        let from = *begin.last().unwrap();
        begin.push(from + place(&file[from..], "\n") + 1);
    }
    begin
}

/// With another letter at this place, in the alphabet of base64.
fn other_letter(file: &[u8], place: usize) -> Vec<u8> {
    let mut file = file.to_vec();
    file[place] = if file[place] == b'A' { b'B' } else { b'A' };
    file
}

pub fn all(identity: &x25519::Identity) -> Vec<Value> {
    let secret = identity.to_string().expose_secret().to_owned();
    let stranger = x25519::Identity::generate().to_string().expose_secret().to_owned();
    let recovery = |holds: &str| age::encrypt(&identity.to_public(), holds.as_bytes()).unwrap();
    let vector = |file: &str, name: &str, bytes: &[u8], secret: &str, expect: &str, why: &str| json!({ "name": name, "why": why, "file": file, "hex": hex::encode(bytes), "secret": secret, "expect": expect });
    let mut made = Vec::new();
    let opens = [
        ("recovery", "a recovery file", recovery(KEY), secret.clone(), "As the program writes it."),
        ("recovery", "an identity in small letters", recovery(KEY), secret.to_lowercase(), "It may be typed from paper."),
        ("recovery", "an identity with blanks around it", recovery(KEY), format!(" {secret}\n"), "It may be pasted."),
        ("recovery", "a key in great letters", recovery(&KEY.to_uppercase()), secret.clone(), "Hexadecimal all the same."),
        ("recovery", "a file in armour", armoured(&recovery(KEY)), secret.clone(), "age's own text form."),
        (
            "passphrase",
            "a passphrase file",
            by_passphrase(PASSPHRASE, KEY),
            PASSPHRASE.to_owned(),
            "As the program writes it, at a lower cost.",
        ),
        (
            "passphrase",
            "a passphrase beyond ASCII",
            by_passphrase("sjö måne älv", KEY),
            "sjö måne älv".to_owned(),
            "Taken as UTF-8.",
        ),
    ];
    made.extend(opens.iter().map(|(file, name, bytes, secret, why)| vector(file, name, bytes, secret, "opens", why)));
    for (file, whole, secret) in
        [("recovery", recovery(KEY), secret.as_str()), ("passphrase", by_passphrase(PASSPHRASE, KEY), PASSPHRASE)]
    {
        let [_, stanza, wrapped, mac, payload] = lines(&whole)[..] else { unreachable!() };
        let mut push = |name: &str, bytes: &[u8], expect: &str, why: &str| {
            made.push(vector(file, &format!("{file}: {name}"), bytes, secret, expect, why));
        };
        push(
            "another wrapped key",
            &other_letter(&whole, wrapped + 8),
            "wrong_passphrase",
            "It cannot be told from a secret that does not fit.",
        );
        push(
            "another salt or share",
            &other_letter(&whole, stanza + 15),
            "wrong_passphrase",
            "It cannot be told from a secret that does not fit.",
        );
        push(
            "another code over the header",
            &other_letter(&whole, mac + 12),
            "damaged_key",
            "The key fits, the header was altered.",
        );
        push(
            "another title",
            &replaced(&whole, "encryption.org/v1", "encryption.org/v9"),
            "damaged_key",
            "No age file of form 1.",
        );
        push("another nonce", &flipped(&whole, payload + 3), "damaged_key", "What is sealed does not verify.");
        push("an altered body", &flipped(&whole, payload + 20), "damaged_key", "What is sealed does not verify.");
        push("an altered end", &flipped(&whole, whole.len() - 1), "damaged_key", "What is sealed does not verify.");
        push("empty", &[], "damaged_key", "No age file.");
        push("cut in the header", &whole[..mac + 4], "damaged_key", "No whole age file.");
        push("cut before the body", &whole[..payload + 16], "damaged_key", "No whole age file.");
        push("cut in the body", &whole[..whole.len() - 1], "damaged_key", "No whole age file.");
        push("more after the body", &[whole.as_slice(), b"more"].concat(), "damaged_key", "What is sealed does not verify.");
    }
    let whole = by_passphrase(PASSPHRASE, KEY);
    made.push(vector("passphrase", "another passphrase", &whole, "seven quiet heron", "wrong_passphrase", "One letter short."));
    made.push(vector(
        "passphrase",
        "a passphrase with a blank at its end",
        &whole,
        "seven quiet herons ",
        "wrong_passphrase",
        "Taken as it is typed.",
    ));
    made.push(vector(
        "passphrase",
        "a work factor that is too high",
        &replaced(&whole, " 10\n", " 19\n"),
        PASSPHRASE,
        "damaged_key",
        "It would ask for 512 MiB.",
    ));
    made.push(vector(
        "passphrase",
        "a work factor that is far too high",
        &replaced(&whole, " 10\n", " 63\n"),
        PASSPHRASE,
        "damaged_key",
        "It would ask for more than there is.",
    ));
    made.push(vector(
        "passphrase",
        "a work factor that is no number",
        &replaced(&whole, " 10\n", " x0\n"),
        PASSPHRASE,
        "damaged_key",
        "No scrypt recipient.",
    ));
    made.push(vector("recovery", "another identity", &recovery(KEY), &stranger, "wrong_passphrase", "That of another sheet."));
    made.push(vector(
        "recovery",
        "an identity with a slip",
        &recovery(KEY),
        &replaced_last(&secret),
        "wrong_passphrase",
        "Its own checksum does not fit.",
    ));
    for (holds, why) in [
        ("", "Nothing is in it."),
        ("not a key", "Something else is in it."),
        (&KEY[..63], "One digit short."),
        (&"g".repeat(64), "No hexadecimal digits."),
    ] {
        made.push(vector("recovery", &format!("what is no key: {holds:.9}"), &recovery(holds), &secret, "damaged_key", why));
    }
    made
}

fn replaced_last(secret: &str) -> String {
    let (rest, last) = secret.split_at(secret.len() - 1);
    format!("{rest}{}", if last == "Q" { "P" } else { "Q" })
}

fn armoured(file: &[u8]) -> Vec<u8> {
    let mut writer = armor::ArmoredWriter::wrap_output(Vec::new(), armor::Format::AsciiArmor).unwrap();
    writer.write_all(file).unwrap();
    writer.finish().unwrap()
}
