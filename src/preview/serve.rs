use super::gate::secret;
use super::routes::{Desk, routes};
use super::shelf::Shelf;
use super::watch::Caller;
use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use std::io;
use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::sync::Arc;
use std::thread::{self, JoinHandle};
use std::time::Duration;
use tokio::runtime;
use tokio::sync::{Semaphore, oneshot};

/// So many connections are served at once; others wait. A browser opens six.
const CONNECTIONS: usize = 48;
/// So many pages may listen for changes.
const LISTENERS: usize = 16;
/// So many things are made or drawn at once.
const HANDS: usize = 4;
/// A connection on which nobody asks for so long is closed.
const PATIENCE: Duration = Duration::from_secs(20);
/// A pause when the system has no room for a connection.
const PAUSE: Duration = Duration::from_millis(50);

/// The thread that serves; it ends when this is dropped.
#[derive(Debug)]
pub(super) struct Server {
    address: SocketAddr,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves a shelf on a port of 127.0.0.1.
    pub(super) fn start(shelf: Arc<Shelf>, port: u16, caller: Caller) -> io::Result<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        listener.set_nonblocking(true)?;
        let address = listener.local_addr()?;
        let secret = || secret().map_err(io::Error::other);
        let desk = Desk {
            shelf,
            caller,
            hosts: ["127.0.0.1", "localhost"].map(|name| format!("{name}:{}", address.port())),
            token: secret()?,
            run: secret()?,
            listeners: Arc::new(Semaphore::new(LISTENERS)),
        };
        let router = routes(Arc::new(desk));
        let runtime = runtime::Builder::new_current_thread()
            .enable_all()
            .max_blocking_threads(HANDS)
            .build()?;
        let (stop, stopped) = oneshot::channel();
        let thread = thread::Builder::new().name("serve".to_owned()).spawn(move || {
            runtime.block_on(async move {
                tokio::spawn(accept(listener, router));
                // A sender that is gone stops it as well.
                let _ = stopped.await;
            });
        })?;
        Ok(Self { address, stop: Some(stop), thread: Some(thread) })
    }

    pub(super) fn address(&self) -> SocketAddr {
        self.address
    }

    /// Serves until the process ends.
    pub(super) fn wait(mut self) {
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        drop(self.stop.take());
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

/// Takes connections, as many at once as there are places.
async fn accept(listener: TcpListener, router: Router) {
    let Ok(listener) = tokio::net::TcpListener::from_std(listener) else { return };
    let places = Arc::new(Semaphore::new(CONNECTIONS));
    while let Ok(place) = Arc::clone(&places).acquire_owned().await {
        let Ok((stream, _)) = listener.accept().await else {
            tokio::time::sleep(PAUSE).await;
            continue;
        };
        let service = TowerToHyperService::new(router.clone());
        tokio::spawn(async move {
            let connection = http1::Builder::new()
                .timer(TokioTimer::new())
                .header_read_timeout(PATIENCE)
                .serve_connection(TokioIo::new(stream), service);
            // Browsers break connections off whenever they like.
            let _ = connection.await;
            drop(place);
        });
    }
}
