package org.tallywright.server;

import java.security.GeneralSecurityException;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.cert.X509Certificate;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.io.ApplicationResourceLoader;
import org.springframework.boot.ssl.pem.PemSslStore;
import org.springframework.boot.ssl.pem.PemSslStoreDetails;
import org.springframework.core.env.Environment;

/**
 * The owner's own certificate and key, as PEM files (or their text).
 *
 * @param certificate path, or null where none is given
 */
record GivenCertificate(
        @Nullable String certificate,
        @Nullable String key,
        @Nullable String keyPassword) {
    private static final String TEXT = "-----BEGIN";

    static GivenCertificate of(Environment environment) {
        return new GivenCertificate(
                environment.getProperty("server.ssl.certificate"),
                environment.getProperty("server.ssl.certificate-private-key"),
                environment.getProperty("server.ssl.key-password"));
    }

    /** @throws StartRefused where one is given without the other, cannot be read, or they do not belong together */
    void refuseUnlessReadable() {
        if (certificate == null && key == null) {
            return;
        }
        if (certificate == null || key == null) {
            throw new StartRefused("A certificate and its key belong together; give both SERVER_SSL_CERTIFICATE"
                    + " and SERVER_SSL_CERTIFICATE_PRIVATE_KEY.");
        }
        refuseMissing("certificate", certificate, "SERVER_SSL_CERTIFICATE");
        refuseMissing("key", key, "SERVER_SSL_CERTIFICATE_PRIVATE_KEY");
        PemSslStore store = Objects.requireNonNull(PemSslStore.load(PemSslStoreDetails.forCertificate(certificate)
                .withPrivateKey(key)
                .withPrivateKeyPassword(keyPassword)));
        refuseStrangers(first(store), privateKey(store));
    }

    private static void refuseMissing(String what, String path, String variable) {
        if (!path.contains(TEXT)
                && !ApplicationResourceLoader.get().getResource(path).isReadable()) {
            throw new StartRefused(
                    "The " + what + " file " + path + " is not there or cannot be read; correct " + variable + ".");
        }
    }

    private X509Certificate first(PemSslStore store) {
        try {
            List<X509Certificate> chain = store.certificates();
            if (chain != null && !chain.isEmpty()) {
                return chain.get(0);
            }
        } catch (RuntimeException unreadable) {
            throw notPem("certificate", certificate, unreadable);
        }
        throw notPem("certificate", certificate, null);
    }

    private PrivateKey privateKey(PemSslStore store) {
        try {
            PrivateKey read = store.privateKey();
            if (read != null) {
                return read;
            }
        } catch (RuntimeException unreadable) {
            throw notPem("key", key, unreadable);
        }
        throw notPem("key", key, null);
    }

    private static StartRefused notPem(String what, @Nullable String path, @Nullable RuntimeException cause) {
        String name = path == null || path.contains(TEXT) ? "that was given" : "in " + path;
        return new StartRefused(
                "The " + what + " " + name + " cannot be read; it must be in PEM form"
                        + (what.equals("key")
                                ? " and, if it has a password, SERVER_SSL_KEY_PASSWORD must hold it."
                                : "."),
                cause);
    }

    private static void refuseStrangers(X509Certificate certificate, PrivateKey key) {
        if (!belong(certificate.getPublicKey(), key)) {
            throw new StartRefused("The key in SERVER_SSL_CERTIFICATE_PRIVATE_KEY is not the one of the certificate in"
                    + " SERVER_SSL_CERTIFICATE.");
        }
    }

    /** What the key signs, the certificate must confirm; of kinds of key that we do not know we say nothing. */
    private static boolean belong(PublicKey open, PrivateKey key) {
        if (!open.getAlgorithm().equals(key.getAlgorithm())) {
            return false;
        }
        String algorithm = switch (key.getAlgorithm()) {
            case "RSA" -> "SHA256withRSA";
            case "EC" -> "SHA256withECDSA";
            default -> "";
        };
        if (algorithm.isEmpty()) {
            return true;
        }
        try {
            byte[] said = {1, 2, 3};
            Signature sign = Signature.getInstance(algorithm);
            sign.initSign(key);
            sign.update(said);
            Signature confirm = Signature.getInstance(algorithm);
            confirm.initVerify(open);
            confirm.update(said);
            return confirm.verify(sign.sign());
        } catch (GeneralSecurityException e) {
            return false;
        }
    }
}
