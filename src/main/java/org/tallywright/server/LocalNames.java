package org.tallywright.server;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.UnknownHostException;
import java.util.List;

/** Under which names and addresses this machine may be reached in its own network. */
final class LocalNames {
    private LocalNames() {}

    static String hostName() {
        try {
            return InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException e) {
            return "localhost";
        }
    }

    /** The IPv4 addresses of the interfaces that are up, loopback included. */
    static List<String> addresses() throws IOException {
        return NetworkInterface.networkInterfaces()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(Inet4Address.class::isInstance)
                .map(InetAddress::getHostAddress)
                .sorted()
                .toList();
    }
}
