package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class NearestTest {
    @Test
    void neighbours_swapped_are_one_edit_and_no_part_is_edited_twice() {
        assertThat(Nearest.edits("capacitor", "capacitor", 0)).isZero();
        assertThat(Nearest.edits("cpaacitor", "capacitor", 2)).isEqualTo(1);
        assertThat(Nearest.edits("capaitor", "capacitor", 2)).isEqualTo(1);
        assertThat(Nearest.edits("ca", "abc", 4))
                .as("2 if a swap might be edited further")
                .isEqualTo(3);
        assertThat(Nearest.edits("", "fan", 4)).isEqualTo(3);
        assertThat(Nearest.edits("fan", "", 4)).isEqualTo(3);
        assertThat(Nearest.edits("fan", "fuse", 1)).isGreaterThan(1);
    }

    @Test
    void the_band_gives_what_the_whole_table_gives() {
        Random random = new Random(29);
        for (int i = 0; i < 50_000; i++) {
            String a = word(random);
            String b = word(random);
            int whole = whole(a, b);
            for (int most = 0; most <= 4; most++) {
                int edits = Nearest.edits(a, b, most);
                assertThat(Math.min(edits, most + 1)).as(a + " " + b).isEqualTo(Math.min(whole, most + 1));
            }
        }
    }

    private static String word(Random random) {
        StringBuilder word = new StringBuilder();
        for (int length = random.nextInt(9); word.length() < length; ) {
            word.append((char) ('a' + random.nextInt(3)));
        }
        return word.toString();
    }

    private static int whole(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
