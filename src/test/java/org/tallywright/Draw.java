package org.tallywright;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** Values drawn for one try. Ranges give their ends and what is near zero far more often than chance would. */
public final class Draw {
    private static final int SHOWN = 300;

    private final Random random;
    private final List<String> drawn = new ArrayList<>();

    Draw(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L);
    }

    /** Both ends included. */
    public int between(int least, int most) {
        return (int) between((long) least, (long) most);
    }

    /** Both ends included. */
    public long between(long least, long most) {
        return kept(random.nextInt(8) == 0 ? edge(least, most) : spread(least, most));
    }

    private long edge(long least, long most) {
        long[] edges = {least, most, 0, 1, -1, least + 1, most - 1};
        return Math.max(least, Math.min(most, edges[random.nextInt(edges.length)]));
    }

    /** Half the time of any size, half the time with an upper end of fewer digits, so that small ones come up too. */
    private long spread(long least, long most) {
        if (random.nextBoolean()) {
            return random.nextLong(least, most + 1);
        }
        int bits = random.nextInt(63);
        long low = Math.max(least, -(1L << bits));
        long high = Math.min(most, 1L << bits);
        return low > high ? random.nextLong(least, most + 1) : random.nextLong(low, high + 1);
    }

    public boolean coin() {
        return kept(random.nextBoolean());
    }

    @SafeVarargs
    public final <T> T of(T... values) {
        return of(List.of(values));
    }

    public <T> T of(List<T> values) {
        return kept(values.get(random.nextInt(values.size())));
    }

    /** One of the ways to draw. */
    @SafeVarargs
    public final <T> T oneOf(Supplier<? extends T>... ways) {
        return ways[random.nextInt(ways.length)].get();
    }

    public <T> List<T> list(int least, int most, Supplier<T> element) {
        return Stream.generate(element).limit(between(least, most)).toList();
    }

    /** Of these characters only. */
    public String text(String characters, int longest) {
        int[] all = characters.codePoints().toArray();
        return text(longest, () -> all[random.nextInt(all.length)]);
    }

    /** Of any characters: plain ones, controls, other scripts, halves of pairs, what lies beyond the basic plane. */
    public String anyText(int longest) {
        return text(longest, this::anyCharacter);
    }

    private int anyCharacter() {
        return switch (random.nextInt(6)) {
            case 0 -> random.nextInt(0x20);
            case 1 -> random.nextInt(0x20, 0x7f);
            case 2 -> random.nextInt(0x7f, 0x800);
            case 3 -> random.nextInt(0xd800, 0xe000);
            case 4 -> random.nextInt(0x10000, Character.MAX_CODE_POINT + 1);
            default -> random.nextInt(0x10000);
        };
    }

    private String text(int longest, Supplier<Integer> character) {
        StringBuilder text = new StringBuilder();
        int length = random.nextInt(longest + 1);
        while (text.length() < length) {
            text.appendCodePoint(character.get());
        }
        return kept(text.substring(0, length));
    }

    private <T> T kept(T value) {
        String shown = String.valueOf(value);
        drawn.add(shown.length() > SHOWN ? shown.substring(0, SHOWN) + "... (" + shown.length() + " long)" : shown);
        return value;
    }

    /** What was drawn so far, in order, with invisible characters written out. */
    @Override
    public String toString() {
        StringBuilder all = new StringBuilder();
        drawn.toString()
                .chars()
                .forEach(
                        c -> all.append(c < 0x20 || c > 0x7e ? String.format("\\u%04x", c) : String.valueOf((char) c)));
        return all.toString();
    }
}
