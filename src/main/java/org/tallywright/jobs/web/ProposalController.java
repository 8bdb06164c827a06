package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.Proposal;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.TakenOff;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.jobs.TaskDetails;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The tasks that the catalogue proposes for a piece; the reader ticks, changes and takes them. */
@Controller
@RequestMapping("/jobs/{number}/pieces/{id}/proposals")
@Access({Role.OWNER, Role.LEAD})
class ProposalController {
    private final JobDesk desk;
    private final JobHeads heads;
    private final TaskDesk tasks;
    private final PieceRows rows;
    private final PieceKinds kinds;
    private final TaskKinds taskKinds;
    private final Wording wording;
    private final ObjectProvider<TakenOff> takenOff;

    ProposalController(
            JobDesk desk,
            JobHeads heads,
            TaskDesk tasks,
            PieceRows rows,
            PieceKinds kinds,
            TaskKinds taskKinds,
            Wording wording,
            ObjectProvider<TakenOff> takenOff) {
        this.desk = desk;
        this.heads = heads;
        this.tasks = tasks;
        this.rows = rows;
        this.kinds = kinds;
        this.taskKinds = taskKinds;
        this.wording = wording;
        this.takenOff = takenOff;
    }

    /**
     * @param here the job, or the piece, has such a task already
     * @param jobHas of a line once for the job that is counted from parts: what the job has and what its pieces come to; else empty
     * @param basis whether the quantity is counted from the parts of the piece, by rules of thumb, or both
     */
    record Line(
            UUID id,
            UUID kind,
            String name,
            String stage,
            String quantity,
            String unit,
            boolean taken,
            boolean wholeJob,
            boolean here,
            String jobHas,
            Proposal.Basis basis) {
        public boolean isFromParts() {
            return basis == Proposal.Basis.PARTS;
        }

        public boolean isPartly() {
            return basis == Proposal.Basis.BOTH;
        }
    }

    @GetMapping
    String show(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = desk.find(number).guardOpen();
        PieceDetails piece = rows.piece(job.id(), id).details();
        return page(number, id, piece, proposed(job, id, piece), FormErrors.none(), me, model);
    }

    /** By the rules of the kind of piece; where its parts are listed, with what they come to instead. */
    private List<Line> proposed(JobRef job, UUID pieceId, PieceDetails piece) {
        Map<UUID, Quantity> counted = new LinkedHashMap<>();
        takenOff.ifAvailable(bean -> counted.putAll(bean.quantities(job.id(), pieceId)));
        List<Proposal> proposals = kinds.propose(
                piece.pieceKindId(),
                units(piece.width()),
                units(piece.height()),
                units(piece.depth()),
                piece.count(),
                counted);
        Map<UUID, TaskKindCard> cards = taskKinds.byId(
                proposals.stream().map(Proposal::taskKindId).distinct().toList());
        Set<UUID> ofPiece = rows.kindsOf(job.id(), pieceId);
        Map<UUID, Quantity> ofJob = rows.ofWholeJob(job.id());
        List<Line> lines = new ArrayList<>();
        for (Proposal proposal : proposals) {
            TaskKindCard card = cards.get(proposal.taskKindId());
            if (card != null) {
                lines.add(
                        proposal.wholeJob()
                                ? wholeJob(proposal, card, ofJob.get(card.id()))
                                : piece(proposal, card, ofPiece.contains(card.id())));
            }
        }
        return lines;
    }

    private static Line piece(Proposal proposal, TaskKindCard card, boolean here) {
        return line(Ids.next(), card, proposal.quantity().toString(), !here, false, here, "", proposal.basis());
    }

    /**
     * A count from parts is of all pieces so far: what the job has of it already is taken off, else a piece that comes later would
     * either add nothing or the whole once more.
     *
     * @param has null where the job has no such task
     */
    private static Line wholeJob(Proposal proposal, TaskKindCard card, @Nullable Quantity has) {
        Quantity all = proposal.quantity();
        if (has == null || has.isZero() || proposal.basis() == Proposal.Basis.RULE) {
            return line(Ids.next(), card, all.toString(), has == null, true, has != null, "", proposal.basis());
        }
        Quantity more = all.compareTo(has) > 0 ? all.minus(has) : Quantity.ZERO;
        String jobHas = "the job has " + has + ", its pieces come to " + all + " now";
        return line(Ids.next(), card, more.toString(), !more.isZero(), true, true, jobHas, proposal.basis());
    }

    private static @Nullable Long units(@Nullable Length length) {
        return length == null ? null : length.units();
    }

    private static Line line(
            UUID id,
            TaskKindCard card,
            String quantity,
            boolean taken,
            boolean wholeJob,
            boolean here,
            String jobHas,
            Proposal.Basis basis) {
        return new Line(
                id,
                card.id(),
                card.name(),
                card.stageName(),
                quantity,
                card.unit().code(),
                taken,
                wholeJob,
                here,
                jobHas,
                basis);
    }

    private String page(
            String number,
            UUID pieceId,
            PieceDetails piece,
            List<Line> lines,
            FormErrors errors,
            SignedIn me,
            Model model) {
        model.addAttribute("head", heads.find(number, me, "job"));
        model.addAttribute("pieceId", pieceId);
        model.addAttribute("piece", piece);
        model.addAttribute("sizes", wording.sizes(piece.width(), piece.height(), piece.depth()));
        model.addAttribute("lines", lines);
        model.addAttribute("errors", errors);
        return "jobs/proposals";
    }

    @PostMapping
    String create(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> sent,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        PieceDetails piece = rows.piece(job.id(), id).details();
        ProposalForm form = ProposalForm.of(sent);
        FormReader read = new FormReader();
        Map<UUID, TaskDetails> taken = form.read(read, id);
        if (!read.refused()) {
            try {
                tasks.addAll(job.id(), taken, me.personId());
                Flash.done(redirect, taken.size() == 1 ? "One task is added." : taken.size() + " tasks are added.");
                return "redirect:/jobs/" + number;
            } catch (Refused refused) {
                read.refuse("", refused.sentence());
            }
        }
        Answer.refused(response);
        return page(number, id, piece, typed(form), read.errors(), me, model);
    }

    private List<Line> typed(ProposalForm form) {
        Map<UUID, TaskKindCard> cards =
                taskKinds.byId(form.rows().stream().map(ProposalForm.Row::kind).toList());
        List<Line> lines = new ArrayList<>();
        for (ProposalForm.Row row : form.rows()) {
            TaskKindCard card = cards.get(row.kind());
            if (card != null) {
                lines.add(line(
                        row.id(), card, row.quantity(), row.taken(), row.wholeJob(), false, "", Proposal.Basis.RULE));
            }
        }
        return lines;
    }
}
