package org.tallywright.demo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.CubicCurve2D;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Random;
import javax.imageio.ImageIO;

/** Draws what a phone in the shop could have seen: four by three, no word in it. */
final class DemoPictures {
    private static final int WIDTH = 960;
    private static final int HEIGHT = 720;
    private static final Color CHERRY = new Color(0x9a5633);
    private static final Color PINE = new Color(0xd9b27c);
    private static final Color PLASTER = new Color(0xcfc9bd);
    private static final Color STEEL = new Color(0x454b50);

    private final Graphics2D pen;
    private final Random random = new Random(54);

    private DemoPictures(Graphics2D pen) {
        this.pen = pen;
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    }

    static byte[] jpeg(String name) {
        BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = picture.createGraphics();
        DemoPictures draw = new DemoPictures(pen);
        switch (name) {
            case "studs" -> draw.studs();
            case "outlet" -> draw.outlet();
            case "doors" -> draw.doors();
            case "clamps" -> draw.clamps();
            default -> throw new IllegalArgumentException("no demo picture " + name);
        }
        pen.dispose();
        try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            ImageIO.write(picture, "jpeg", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void studs() {
        fill(new Color(0x6b6459), 0, 0, WIDTH, HEIGHT);
        fill(new Color(0x837a6c), 40, 60, 880, 600);
        board(PINE, 40, 60, 880, 46);
        board(PINE, 40, 614, 880, 46);
        board(PINE, 230, 106, 70, 508);
        pen.rotate(0.012, 660, 600);
        board(PINE, 640, 106, 70, 508);
        pen.rotate(-0.012, 660, 600);
        fill(new Color(0x2f3a30), 300, 400, 340, 14);
    }

    private void outlet() {
        pen.setPaint(new GradientPaint(0, 0, PLASTER, WIDTH, HEIGHT, new Color(0xb4ad9f)));
        pen.fillRect(0, 0, WIDTH, HEIGHT);
        board(PINE, 0, 600, WIDTH, 120);
        fill(new Color(0x9f998c), 396, 236, 176, 256);
        fill(new Color(0xf0ede4), 390, 230, 170, 250);
        for (int y : new int[] {280, 390}) {
            fill(STEEL, 440, y, 12, 44);
            fill(STEEL, 498, y, 12, 36);
        }
        pen.setColor(new Color(0x355f9a));
        pen.setStroke(new BasicStroke(7, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        pen.drawLine(600, 350, 800, 350);
        pen.drawLine(760, 320, 800, 350);
        pen.drawLine(760, 380, 800, 350);
    }

    private void doors() {
        fill(new Color(0x4c5157), 0, 0, WIDTH, HEIGHT);
        for (int i = 0; i < 4; i++) {
            int x = 40 + i * 224;
            board(CHERRY.darker(), x, 70, 206, 580);
            board(i % 2 == 0 ? CHERRY.brighter() : CHERRY, x + 40, 112, 126, 496);
        }
    }

    private void clamps() {
        fill(new Color(0x8a7f6d), 0, 0, WIDTH, HEIGHT);
        for (int i = 0; i < 5; i++) {
            board(i % 2 == 0 ? CHERRY : CHERRY.brighter(), 60, 150 + i * 84, 840, 82);
        }
        for (int x : new int[] {170, 440, 710}) {
            fill(STEEL, x, 60, 26, 600);
            fill(new Color(0x8c2f22), x - 26, 88, 78, 56);
            fill(new Color(0x8c2f22), x - 26, 574, 78, 56);
        }
    }

    private void fill(Color colour, int x, int y, int width, int height) {
        pen.setColor(colour);
        pen.fillRect(x, y, width, height);
    }

    /** With its grain along the longer side. */
    private void board(Color wood, int x, int y, int width, int height) {
        boolean lying = width > height;
        pen.setPaint(new GradientPaint(x, y, wood, x + width, y + height, wood.darker()));
        pen.fillRect(x, y, width, height);
        pen.setStroke(new BasicStroke(1.6f));
        pen.setColor(new Color(60, 30, 10, 60));
        for (int line = 4; line < (lying ? height : width) - 3; line += 5 + random.nextInt(6)) {
            double sway = random.nextGaussian() * 3;
            pen.draw(
                    lying
                            ? new CubicCurve2D.Double(
                                    x,
                                    y + line,
                                    x + width * .3,
                                    y + line + sway,
                                    x + width * .6,
                                    y + line - sway,
                                    x + width,
                                    y + line)
                            : new CubicCurve2D.Double(
                                    x + line,
                                    y,
                                    x + line + sway,
                                    y + height * .3,
                                    x + line - sway,
                                    y + height * .6,
                                    x + line,
                                    y + height));
        }
        pen.setColor(new Color(40, 20, 8, 140));
        pen.draw(new Line2D.Double(x, y + height, x + width, y + height));
        pen.draw(new Line2D.Double(x + width, y, x + width, y + height));
    }
}
