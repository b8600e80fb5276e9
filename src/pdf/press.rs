//! Deflate (RFC 1951, in the frame of RFC 1950) of one stream after the other: what the
//! compressor needs to work is set up once.

use flate2::{Compress, Compression, FlushCompress, Status};

use super::PdfError;

/// How hard the compressor tries. The best it can takes twice the time of this for one
/// or two per cent of size.
const EFFORT: Compression = Compression::new(6);

/// A compressor with its memory.
pub(super) struct Press(Compress);

impl Press {
    pub fn new() -> Self {
        Self(Compress::new(EFFORT, true))
    }

    /// Deflated bytes.
    pub fn deflate(&mut self, bytes: &[u8]) -> Result<Vec<u8>, PdfError> {
        self.0.reset();
        // What cannot be pressed grows by five bytes for each 16 KB.
        let mut out = Vec::with_capacity(bytes.len() + bytes.len() / 1024 + 64);
        let status = self.0.compress_vec(bytes, &mut out, FlushCompress::Finish);
        match status.map_err(|fault| PdfError::Bytes(fault.to_string()))? {
            Status::StreamEnd => {
                out.shrink_to_fit();
                Ok(out)
            }
            Status::Ok | Status::BufError => Err(PdfError::Bytes("a stream is too long".into())),
        }
    }
}
