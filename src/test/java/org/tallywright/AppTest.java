package org.tallywright;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.ActiveProfiles;
import org.springframework.test.context.TestExecutionListeners;
import org.springframework.test.context.TestExecutionListeners.MergeMode;

/**
 * The whole application on the test database, with MockMvc and a real port, on an empty shop and with the clock at its
 * fixed instant before each test method.
 *
 * <p>All tests that need Spring use this and nothing beside it (no mock beans, no properties, no further imports): one
 * shape of context means that it starts once for the whole suite.
 */
@Documented
@Inherited
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT)
@AutoConfigureMockMvc
@ActiveProfiles("test")
@Import({TestDatabase.class, TestClock.class, DatabaseReset.class, QueryCount.class})
@TestExecutionListeners(listeners = FreshShopListener.class, mergeMode = MergeMode.MERGE_WITH_DEFAULTS)
public @interface AppTest {}
