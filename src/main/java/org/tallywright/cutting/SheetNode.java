package org.tallywright.cutting;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A rectangle while a sheet is being laid out, in sizes with the kerf in them. Free until a block is put in its corner. */
final class SheetNode {
    final long x;
    final long y;
    final long length;
    final long width;

    @Nullable
    Block block;

    boolean turned;
    boolean rip;

    @Nullable
    SheetNode first;

    @Nullable
    SheetNode second;

    SheetNode(long x, long y, long length, long width) {
        this.x = x;
        this.y = y;
        this.length = length;
        this.width = width;
    }

    /** Cuts this in two; what lies first is returned. */
    SheetNode cut(boolean along, long size) {
        rip = along;
        SheetNode near = along ? new SheetNode(x, y, length, size) : new SheetNode(x, y, size, width);
        second = along
                ? new SheetNode(x, y + size, length, width - size)
                : new SheetNode(x + size, y, length - size, width);
        first = near;
        return near;
    }

    /** The finished tree in real sizes. */
    Region region(long kerf, long trim) {
        long realX = x + trim;
        long realY = y + trim;
        SheetNode near = first;
        SheetNode far = second;
        if (near != null && far != null) {
            boolean dust = (rip ? far.width : far.length) <= kerf;
            return new Region.Cut(
                    realX,
                    realY,
                    length - kerf,
                    width - kerf,
                    rip,
                    rip ? realY + near.width - kerf : realX + near.length - kerf,
                    near.region(kerf, trim),
                    dust ? null : far.region(kerf, trim));
        }
        Block laid = block;
        return laid == null
                ? new Region.Left(realX, realY, length - kerf, width - kerf)
                : rows(laid.rows(), realX, realY, length - kerf, width - kerf, kerf);
    }

    /** The rows of a block one behind the other. */
    private Region rows(List<List<Block.Member>> rows, long atX, long atY, long restLength, long restWidth, long kerf) {
        List<Block.Member> row = rows.get(0);
        if (rows.size() == 1) {
            return row(row, atX, atY, restLength, restWidth, kerf);
        }
        List<List<Block.Member>> behind = rows.subList(1, rows.size());
        long size = Block.longest(row) - kerf;
        Region one = turned ? row(row, atX, atY, restLength, size, kerf) : row(row, atX, atY, size, restWidth, kerf);
        Region others = turned
                ? rows(behind, atX, atY + size + kerf, restLength, restWidth - size - kerf, kerf)
                : rows(behind, atX + size + kerf, atY, restLength - size - kerf, restWidth, kerf);
        return new Region.Cut(atX, atY, restLength, restWidth, turned, turned ? atY + size : atX + size, one, others);
    }

    /** The members of a row one beside the other, each freed from what is shorter than the longest of them. */
    private Region row(List<Block.Member> row, long atX, long atY, long restLength, long restWidth, long kerf) {
        Block.Member member = row.get(0);
        long memberLength = (turned ? member.width() : member.length()) - kerf;
        long memberWidth = (turned ? member.length() : member.width()) - kerf;
        if (row.size() == 1) {
            return trimmed(member, atX, atY, restLength, restWidth, memberLength, memberWidth, kerf);
        }
        List<Block.Member> behind = row.subList(1, row.size());
        boolean stacked = !turned;
        long size = stacked ? memberWidth : memberLength;
        Region one = stacked
                ? trimmed(member, atX, atY, restLength, memberWidth, memberLength, memberWidth, kerf)
                : trimmed(member, atX, atY, memberLength, restWidth, memberLength, memberWidth, kerf);
        Region others = stacked
                ? row(behind, atX, atY + size + kerf, restLength, restWidth - size - kerf, kerf)
                : row(behind, atX + size + kerf, atY, restLength - size - kerf, restWidth, kerf);
        return new Region.Cut(atX, atY, restLength, restWidth, stacked, stacked ? atY + size : atX + size, one, others);
    }

    private Region trimmed(
            Block.Member member,
            long atX,
            long atY,
            long boxLength,
            long boxWidth,
            long memberLength,
            long memberWidth,
            long kerf) {
        Region.Part part =
                new Region.Part(atX, atY, memberLength, memberWidth, member.part(), turned != member.across());
        if (boxLength > memberLength) {
            long rest = boxLength - memberLength - kerf;
            Region far = rest > 0 ? new Region.Left(atX + memberLength + kerf, atY, rest, boxWidth) : null;
            Region near = trimmed(member, atX, atY, memberLength, boxWidth, memberLength, memberWidth, kerf);
            return new Region.Cut(atX, atY, boxLength, boxWidth, false, atX + memberLength, near, far);
        }
        if (boxWidth > memberWidth) {
            long rest = boxWidth - memberWidth - kerf;
            Region far = rest > 0 ? new Region.Left(atX, atY + memberWidth + kerf, boxLength, rest) : null;
            return new Region.Cut(atX, atY, boxLength, boxWidth, true, atY + memberWidth, part, far);
        }
        return part;
    }
}
