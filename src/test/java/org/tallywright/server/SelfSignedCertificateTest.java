package org.tallywright.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.security.cert.X509Certificate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SelfSignedCertificateTest {
    @TempDir
    Path folder;

    @Test
    void namesThisMachineAndIsMadeOnce() throws Exception {
        SelfSignedCertificate certificate = new SelfSignedCertificate(folder);
        certificate.makeOnce();
        X509Certificate first = read(certificate);
        assertThat(first.getSubjectAlternativeNames().toString()).contains("localhost", "127.0.0.1");
        certificate.makeOnce();
        assertThat(read(new SelfSignedCertificate(folder))).isEqualTo(first);
    }

    private static X509Certificate read(SelfSignedCertificate certificate) throws Exception {
        KeyStore store = KeyStore.getInstance("PKCS12");
        try (var in = Files.newInputStream(certificate.store())) {
            store.load(in, certificate.password().toCharArray());
        }
        return (X509Certificate) store.getCertificate("tallywright");
    }
}
