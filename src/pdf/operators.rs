//! Operators of content streams as bytes (ISO 32000-1, 7.8.2 and Annex A).

use crate::ink::Colour;

/// Hundredths of a point (3.5 micrometres), the fineness of every coordinate.
pub(super) type Hundredths = i32;

/// Rounds points.
pub(super) fn hundredths(points: f32) -> Hundredths {
    (points * 100.0).round() as Hundredths
}

/// The stream of one page while it is written.
#[derive(Default)]
pub(super) struct Operators(Vec<u8>);

impl Operators {
    pub fn into_bytes(self) -> Vec<u8> {
        self.0
    }

    /// An operator, after its operands.
    pub fn operator(&mut self, name: &str) {
        self.raw(name.as_bytes());
        self.0.push(b'\n');
    }

    /// Bytes that are operands already.
    pub fn raw(&mut self, bytes: &[u8]) {
        self.0.extend_from_slice(bytes);
    }

    /// A length as an operand.
    pub fn length(&mut self, value: Hundredths) {
        decimal(&mut self.0, value, 2);
        self.0.push(b' ');
    }

    /// A place as two operands.
    pub fn place(&mut self, (x, y): (Hundredths, Hundredths)) {
        self.length(x);
        self.length(y);
    }

    pub fn name(&mut self, name: &str) {
        self.0.push(b'/');
        self.raw(name.as_bytes());
        self.0.push(b' ');
    }

    pub fn string(&mut self, bytes: &[u8]) {
        super::object::literal(&mut self.0, bytes);
    }

    pub fn array(&mut self, lengths: &[Hundredths]) {
        self.0.push(b'[');
        for &length in lengths {
            self.length(length);
        }
        self.raw(b"] ");
    }

    /// Colour to fill or to draw with. Grey stays grey, so that a greyscale printer need
    /// not guess.
    pub fn colour(&mut self, colour: Colour, [grey, rgb]: [&str; 2]) {
        let Colour { r, g, b } = colour;
        let parts: &[u8] = if r == g && g == b { &[r] } else { &[r, g, b] };
        for &part in parts {
            let thousandths = (f32::from(part) / 255.0 * 1000.0).round();
            decimal(&mut self.0, thousandths as i32, 3);
            self.0.push(b' ');
        }
        self.operator(if parts.len() == 1 { grey } else { rgb });
    }
}

/// A whole number of units of the last of so many decimals, without needless zeros.
pub(super) fn decimal(out: &mut Vec<u8>, value: i32, decimals: usize) {
    let mut digits = [b'0'; 12];
    let mut at = digits.len();
    let mut rest = value.unsigned_abs();
    let mut significant = false;
    let mut place = 0;
    while place <= decimals || rest > 0 {
        if place == decimals && significant {
            at -= 1;
            digits[at] = b'.';
        }
        let digit = (rest % 10) as u8;
        significant |= digit != 0;
        if place >= decimals || significant {
            at -= 1;
            digits[at] = b'0' + digit;
        }
        rest /= 10;
        place += 1;
    }
    if value < 0 {
        out.push(b'-');
    }
    out.extend_from_slice(&digits[at..]);
}

/// Adds two-byte codes to a string in parentheses; what would end it or be taken for
/// another line end is escaped (ISO 32000-1, 7.3.4.2).
pub(super) fn code(out: &mut Vec<u8>, code: u16) {
    for byte in code.to_be_bytes() {
        match byte {
            b'(' | b')' | b'\\' => out.extend([b'\\', byte]),
            b'\r' => out.extend(b"\\r"),
            _ => out.push(byte),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::decimal;

    #[test]
    fn numbers_are_as_short_as_they_can_be() {
        for (value, decimals, text) in [
            (0, 2, "0"),
            (5, 2, "0.05"),
            (-5, 2, "-0.05"),
            (50, 2, "0.5"),
            (100, 2, "1"),
            (-12_340, 2, "-123.4"),
            (84_189, 2, "841.89"),
            (1000, 3, "1"),
            (7, 3, "0.007"),
            (-250, 0, "-250"),
            (0, 0, "0"),
            (i32::MAX, 2, "21474836.47"),
            (i32::MIN, 3, "-2147483.648"),
        ] {
            let mut out = Vec::new();
            decimal(&mut out, value, decimals);
            assert_eq!(String::from_utf8_lossy(&out), text);
        }
    }
}
