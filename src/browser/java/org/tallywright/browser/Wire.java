package org.tallywright.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * A line to the server that breaks where it is told to. A browser's own offline switch does not reach what its service
 * worker asks for; a broken line reaches everything.
 */
final class Wire implements AutoCloseable {
    /** Where the line breaks at a save; it then stays down until {@link #mend}. */
    enum Cut {
        /** Not at all. */
        NONE,
        /** The save does not reach the server. */
        BEFORE,
        /** The server has kept it, nothing of its answer comes back. */
        AFTER,
        /** The server has kept it, and its answer breaks off within the first line. */
        WITHIN
    }

    private static final int HALF_A_LINE = 9;
    private final ServerSocket door;
    private final int server;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private final Deque<Cut> plan = new ArrayDeque<>();
    private final AtomicInteger saves = new AtomicInteger();
    private final AtomicReference<@Nullable Runnable> beforeADay = new AtomicReference<>();
    private volatile boolean down;

    Wire(int server) {
        this.server = server;
        try {
            door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        daemon(this::accept);
    }

    String home() {
        return "http://127.0.0.1:" + door.getLocalPort();
    }

    /** What happens at the next saves, one after another; then none is cut. */
    synchronized void plan(Iterable<Cut> cuts) {
        plan.clear();
        cuts.forEach(plan::add);
    }

    /** What happens on the server's side just before the next day sheet is asked for. */
    void beforeADay(Runnable meanwhile) {
        beforeADay.set(meanwhile);
    }

    private synchronized Cut next() {
        saves.incrementAndGet();
        return plan.isEmpty() ? Cut.NONE : plan.remove();
    }

    int saves() {
        return saves.get();
    }

    void cut() {
        down = true;
        open.forEach(Wire::drop);
    }

    void mend() {
        down = false;
    }

    boolean isDown() {
        return down;
    }

    private void accept() {
        while (!door.isClosed()) {
            try {
                Socket browser = door.accept();
                if (down) {
                    drop(browser);
                    continue;
                }
                Socket app = new Socket(InetAddress.getLoopbackAddress(), server);
                browser.setTcpNoDelay(true);
                app.setTcpNoDelay(true);
                open.add(browser);
                open.add(app);
                Line line = new Line(browser, app);
                daemon(line::ask);
                daemon(line::answer);
            } catch (IOException closed) {
                // The test is over, or the server is.
            }
        }
    }

    /** One connection: what is asked and what is answered on it. */
    private final class Line {
        private final Socket browser;
        private final Socket app;
        private volatile Cut cut = Cut.NONE;

        Line(Socket browser, Socket app) {
            this.browser = browser;
            this.app = app;
        }

        void ask() {
            byte[] buffer = new byte[64 * 1024];
            try (InputStream in = browser.getInputStream();
                    OutputStream out = app.getOutputStream()) {
                for (int n = in.read(buffer); n > 0; n = in.read(buffer)) {
                    String head = new String(buffer, 0, Math.min(n, 12), StandardCharsets.ISO_8859_1);
                    if (head.startsWith("POST /days/")) {
                        cut = next();
                    }
                    Runnable meanwhile = head.startsWith("GET /days/") ? beforeADay.getAndSet(null) : null;
                    if (meanwhile != null) {
                        meanwhile.run();
                    }
                    if (cut == Cut.BEFORE || down) {
                        Wire.this.cut();
                        return;
                    }
                    out.write(buffer, 0, n);
                }
            } catch (IOException gone) {
                // One side hung up.
            } finally {
                end();
            }
        }

        void answer() {
            byte[] buffer = new byte[64 * 1024];
            try (InputStream in = app.getInputStream();
                    OutputStream out = browser.getOutputStream()) {
                for (int n = in.read(buffer); n > 0; n = in.read(buffer)) {
                    if (cut != Cut.NONE) {
                        out.write(buffer, 0, cut == Cut.WITHIN ? Math.min(n, HALF_A_LINE) : 0);
                        out.flush();
                        Wire.this.cut();
                        return;
                    }
                    out.write(buffer, 0, n);
                }
            } catch (IOException gone) {
                // One side hung up.
            } finally {
                end();
            }
        }

        private void end() {
            drop(browser);
            drop(app);
            open.remove(browser);
            open.remove(app);
        }
    }

    private static void drop(Socket socket) {
        try {
            socket.close();
        } catch (IOException alreadyGone) {
            // As wanted.
        }
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "wire");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() {
        try {
            door.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        open.forEach(Wire::drop);
    }
}
