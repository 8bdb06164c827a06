package org.tallywright.clients;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;

/** Looks up clients and their sites. */
@Component
@Transactional(readOnly = true)
public class ClientBook {
    private final JdbcClient jdbc;

    ClientBook(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Every client by name. */
    public List<ClientCard> all() {
        return jdbc.sql("select * from client order by lower(name), id")
                .query(ClientBook::client)
                .list();
    }

    /** Clients whose name, phone, mail or site address holds the words, by name; all for no words. */
    public List<ClientCard> search(String words) {
        return jdbc.sql("""
                        select c.* from client c
                        where strpos(lower(c.name || ' ' || c.phone || ' ' || c.email), lower(:words)) > 0
                           or exists (select from site s where s.client_id = c.id
                                      and strpos(lower(s.address), lower(:words)) > 0)
                        order by lower(c.name), c.id""")
                .param("words", words.strip())
                .query(ClientBook::client)
                .list();
    }

    public Optional<ClientCard> client(UUID id) {
        return jdbc.sql("select * from client where id = :id")
                .param("id", id)
                .query(ClientBook::client)
                .optional();
    }

    /** @throws NotHere where there is none of that id */
    public ClientCard card(UUID id) {
        return client(id).orElseThrow(() -> new NotHere("client"));
    }

    /** The names of those of the given clients that exist. */
    public Map<UUID, String> names(Collection<UUID> ids) {
        Map<UUID, String> names = new HashMap<>();
        if (!ids.isEmpty()) {
            jdbc.sql("select id, name from client where id in (:ids)")
                    .param("ids", ids)
                    .query(row -> {
                        names.put(row.getObject("id", UUID.class), row.getString("name"));
                    });
        }
        return names;
    }

    public Optional<SiteCard> site(UUID id) {
        return jdbc.sql("select * from site where id = :id")
                .param("id", id)
                .query(ClientBook::siteCard)
                .optional();
    }

    /** The client's sites, the oldest first. */
    public List<SiteCard> sitesOf(UUID clientId) {
        return jdbc.sql("select * from site where client_id = :id order by id")
                .param("id", clientId)
                .query(ClientBook::siteCard)
                .list();
    }

    /** Those of the given sites that exist, by id. */
    public Map<UUID, SiteCard> sites(Collection<UUID> ids) {
        Map<UUID, SiteCard> sites = new LinkedHashMap<>();
        if (!ids.isEmpty()) {
            jdbc.sql("select * from site where id in (:ids) order by id")
                    .param("ids", ids)
                    .query(ClientBook::siteCard)
                    .list()
                    .forEach(site -> sites.put(site.id(), site));
        }
        return sites;
    }

    /** The addresses of the sites of those clients, the oldest first, by client. */
    public Map<UUID, List<String>> addresses(Collection<UUID> clientIds) {
        Map<UUID, List<String>> addresses = new HashMap<>();
        if (!clientIds.isEmpty()) {
            jdbc.sql("select client_id, address from site where client_id in (:ids) order by id")
                    .param("ids", clientIds)
                    .query(row -> {
                        addresses
                                .computeIfAbsent(row.getObject("client_id", UUID.class), c -> new ArrayList<>())
                                .add(row.getString("address"));
                    });
        }
        return addresses;
    }

    /** All sites with the client each belongs to, for a choice: by client's name, then by age. */
    public List<SiteCard> allSites() {
        return jdbc.sql("select s.* from site s join client c on c.id = s.client_id order by lower(c.name), s.id")
                .query(ClientBook::siteCard)
                .list();
    }

    private static ClientCard client(ResultSet row, int number) throws SQLException {
        return new ClientCard(
                row.getObject("id", UUID.class),
                row.getString("name"),
                row.getString("phone"),
                row.getString("email"),
                row.getString("note"),
                row.getInt("version"));
    }

    private static SiteCard siteCard(ResultSet row, int number) throws SQLException {
        return new SiteCard(
                row.getObject("id", UUID.class),
                row.getObject("client_id", UUID.class),
                row.getString("address"),
                row.getString("access_note"),
                row.getObject("one_way_minutes", Integer.class),
                row.getBoolean("occupied"),
                row.getBoolean("out_of_square"),
                row.getBoolean("stairs"),
                row.getInt("version"));
    }
}
