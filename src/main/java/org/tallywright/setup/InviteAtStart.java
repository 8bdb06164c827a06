package org.tallywright.setup;

import java.util.List;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.stereotype.Component;
import org.tallywright.people.Crew;
import org.tallywright.people.PersonName;
import org.tallywright.server.ShopAddress;
import org.tallywright.server.StartRefused;

/**
 * {@code --invite=NAME} on the command line, by name or sign-in name: prints a one-time link by which that person sets a
 * new password. The way back for an owner who forgot it and has nobody to ask; who can start the server on the shop's
 * data could read them anyway. It is no setting, so that no later start repeats it unasked.
 */
@Component
class InviteAtStart implements ApplicationRunner {
    private final Crew crew;
    private final ShopAddress address;

    InviteAtStart(Crew crew, ShopAddress address) {
        this.crew = crew;
        this.address = address;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        List<String> names = arguments.getOptionValues("invite");
        for (String name : names == null ? List.<String>of() : names) {
            invite(name);
        }
    }

    private void invite(String name) {
        List<PersonName> found = crew.activeCalled(name);
        if (found.size() != 1) {
            throw new StartRefused(
                    found.isEmpty()
                            ? "Nobody active here is called or signs in as \"" + name
                                    + "\"; --invite takes one of these" + " names: " + crew.activeNames() + "."
                            : "More than one person here is called \"" + name + "\"; give --invite the sign-in name.");
        }
        PersonName person = found.get(0);
        String token = crew.inviteFromConsole(person.id());
        System.out.println("One-time link for " + person.name() + ", good for 7 days: " + address.base()
                + "/invitations/" + token);
    }
}
