package org.tallywright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class JobFilterTest {
    @Test
    void takesWhatItDoesNotKnowAsNotSaid() {
        JobFilter filter = JobFilter.of("finished", "me", "", "id; drop table job", "-3");
        assertThat(filter).isEqualTo(new JobFilter("running", null, "", "-number", 1));
        assertThat(filter.orderBy()).isEqualTo("j.year desc, j.sequence desc");
    }

    @Test
    void searchesForSignsAsTheyStand() {
        assertThat(JobFilter.of("all", null, "50%_\\ Oak", null, null).like()).isEqualTo("%50\\%\\_\\\\ oak%");
    }

    @Test
    void keepsTheSearchInItsAddresses() {
        JobFilter filter = JobFilter.of("closed", null, "oak & ash", "title", "3");
        assertThat(filter.path()).isEqualTo("/jobs?state=closed&q=oak%20%26%20ash&sort=title");
        assertThat(filter.unsorted()).isEqualTo("/jobs?state=closed&q=oak%20%26%20ash");
        assertThat(filter.withState("all")).startsWith("/jobs?state=all&q=oak");
    }
}
