package org.tallywright;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.testcontainers.DockerClientFactory;

/** Asks, with an end to its patience, whether a Docker engine is here and has or can get an image. */
final class DockerEngine {
    private static final int PATIENCE_SECONDS = 75;
    private static final int PULL_SECONDS = 60;

    private DockerEngine() {}

    /** Why no container can be started from the image; empty when one can. */
    static String missing(String image) {
        if (!mayBeHere()) {
            return "no Docker engine";
        }
        FutureTask<String> question = new FutureTask<>(() -> ask(image));
        Thread thread = new Thread(question, "docker-question");
        thread.setDaemon(true);
        thread.start();
        try {
            return question.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            return "the Docker engine does not answer";
        } catch (ExecutionException e) {
            return "no Docker engine: " + e.getCause();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "interrupted";
        }
    }

    /** Spares machines without an engine the long search that the client library makes. */
    private static boolean mayBeHere() {
        return System.getenv("DOCKER_HOST") != null
                || System.getProperty("os.name").startsWith("Windows")
                || Files.exists(Path.of("/var/run/docker.sock"))
                || Files.exists(Path.of(System.getProperty("user.home"), ".docker", "run", "docker.sock"));
    }

    private static String ask(String image) throws InterruptedException {
        var client = DockerClientFactory.lazyClient();
        try {
            client.inspectImageCmd(image).exec();
            return "";
        } catch (RuntimeException absent) {
            String name = image.substring(0, image.indexOf(':'));
            String tag = image.substring(image.indexOf(':') + 1);
            try {
                boolean pulled =
                        client.pullImageCmd(name).withTag(tag).start().awaitCompletion(PULL_SECONDS, TimeUnit.SECONDS);
                return pulled ? "" : "pulling " + image + " took too long";
            } catch (RuntimeException refused) {
                return "no image " + image;
            }
        }
    }
}
