package org.tallywright.proof.planted.jobs;

import java.util.UUID;
import org.springframework.data.repository.NoRepositoryBean;
import org.springframework.data.repository.Repository;
import org.tallywright.proof.planted.jobs.web.PlantedForm;

/** Rows of a module, and a domain that knows a form: what {@code ArchitectureTest} must find. */
@NoRepositoryBean
public interface PlantedRows extends Repository<Object, UUID> {
    void save(PlantedForm form);
}
