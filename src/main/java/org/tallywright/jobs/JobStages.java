package org.tallywright.jobs;

import org.springframework.data.jpa.repository.JpaRepository;

interface JobStages extends JpaRepository<JobStage, JobStageId> {}
