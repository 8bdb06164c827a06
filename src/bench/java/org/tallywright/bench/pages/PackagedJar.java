package org.tallywright.bench.pages;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The packaged jar as operations.md says to run it, on a kept data folder: its start and the memory it holds. */
final class PackagedJar {
    private static final List<String> FLAGS =
            List.of("-Xmx192m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xss512k");

    /** @param residentMb NaN where the system does not tell the proportional set size */
    record Figures(double startupMs, double residentMb) {}

    private PackagedJar() {}

    static Figures measure(Path jar, Path data, int idleSeconds) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(FLAGS);
        command.addAll(List.of("-jar", jar.toString(), "--tallywright.data=" + data, "--server.port=0"));
        long start = System.nanoTime();
        Process app = new ProcessBuilder(command).redirectErrorStream(true).start();
        try {
            String home = awaitReady(app);
            double startupMs = (System.nanoTime() - start) / 1e6;
            Visitor visitor = new Visitor(home).signIn(BenchShop.NAME, BenchShop.PASSWORD);
            for (String path : List.of("/", "/jobs", "/materials/purchases", "/hours", "/shop")) {
                visitor.get(path);
            }
            Thread.sleep(idleSeconds * 1000L);
            return new Figures(startupMs, residentMb(app.toHandle(), data));
        } finally {
            app.destroy();
            if (!app.waitFor(30, TimeUnit.SECONDS)) {
                app.destroyForcibly();
            }
        }
    }

    private static String awaitReady(Process app) throws IOException {
        BufferedReader lines = new BufferedReader(new InputStreamReader(app.getInputStream(), StandardCharsets.UTF_8));
        List<String> said = new ArrayList<>();
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            said.add(line);
            int at = line.indexOf("is ready at ");
            if (at >= 0) {
                return line.substring(at + "is ready at ".length()).strip();
            }
        }
        throw new IOException("the jar did not start: " + said);
    }

    /** The application and the server of its data folder with all that they started. */
    private static double residentMb(ProcessHandle app, Path data) throws IOException {
        long server = Long.parseLong(
                Files.readAllLines(data.resolve("pg18/postmaster.pid")).get(0).strip());
        List<ProcessHandle> roots = List.of(app, ProcessHandle.of(server).orElseThrow());
        double kilobytes = 0;
        for (long pid : roots.stream()
                .flatMap(root -> Stream.concat(Stream.of(root), root.descendants()))
                .map(ProcessHandle::pid)
                .distinct()
                .toList()) {
            kilobytes += proportionalKilobytes(pid);
        }
        return kilobytes / 1024;
    }

    private static double proportionalKilobytes(long pid) throws IOException {
        Path file = Path.of("/proc", Long.toString(pid), "smaps_rollup");
        if (!Files.isReadable(file)) {
            return Double.NaN;
        }
        return Files.readAllLines(file).stream()
                .filter(line -> line.startsWith("Pss:"))
                .mapToDouble(line -> Double.parseDouble(line.replaceAll("\\D", "")))
                .sum();
    }
}
