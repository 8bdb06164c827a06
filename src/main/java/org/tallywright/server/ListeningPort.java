package org.tallywright.server;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.Locale;
import org.springframework.core.env.Environment;

/** The address and port at which the pages are to be served. */
record ListeningPort(String address, int port) {
    private static final int HIGHEST = 65_535;

    static ListeningPort of(Environment environment) {
        String typed = environment.getProperty("server.port", "8080").strip();
        if (!typed.matches("-?\\d{1,5}") || Integer.parseInt(typed) > HIGHEST) {
            throw new StartRefused("SERVER_PORT is \"" + typed + "\"; give a number from 1 to " + HIGHEST + ".");
        }
        return new ListeningPort(environment.getProperty("server.address", "").strip(), Integer.parseInt(typed));
    }

    /** The sentence for a port that somebody else holds. */
    static String taken(int port) {
        return "Port " + port + " is taken by another program, perhaps by Tallywright itself; stop that program,"
                + " or set SERVER_PORT to a free port.";
    }

    /** Opens the port for a moment. 0 takes any free one and is not asked for. */
    void refuseUnlessFree() {
        if (port <= 0) {
            return;
        }
        try (ServerSocket socket = new ServerSocket()) {
            socket.bind(new InetSocketAddress(host(), port));
        } catch (UnknownHostException e) {
            throw notOurs(e);
        } catch (SocketException e) {
            throw refused(e);
        } catch (IOException e) {
            throw new StartRefused("Port " + port + " cannot be opened (" + e.getMessage() + ").", e);
        }
    }

    private InetAddress host() throws UnknownHostException {
        return address.isEmpty() ? new InetSocketAddress(0).getAddress() : InetAddress.getByName(address);
    }

    /** The kinds are told apart by the words of the operating system only. */
    private StartRefused refused(SocketException e) {
        String why = String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT);
        if (why.contains("permission")) {
            return new StartRefused(
                    "Port " + port + " may not be opened by this user; set SERVER_PORT to one from 1024 on.", e);
        }
        return why.contains("assign") ? notOurs(e) : new StartRefused(taken(port), e);
    }

    private StartRefused notOurs(IOException e) {
        return new StartRefused(
                "\"" + address + "\" is no address of this machine; set SERVER_ADDRESS to 127.0.0.1,"
                        + " or to 0.0.0.0 for the shop's network.",
                e);
    }
}
