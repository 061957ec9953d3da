package swapworth.report;

import java.util.stream.IntStream;

/** The style sheet of a page: system fonts, one accent, numbers in columns, light, dark, narrow and paper. */
final class PageStyle {

    private static final String SCREEN = """
            :root{--ground:#fff;--text:#22262b;--soft:#5b636d;--rule:#d8dde3;--shade:#f4f6f8;--accent:#025290;\
            color-scheme:light dark}
            @media screen and (prefers-color-scheme:dark){:root{--ground:#16191d;--text:#dfe3e8;--soft:#a2abb5;--rule:#343a42;\
            --shade:#1e2227;--accent:#b3cdff}}
            *{box-sizing:border-box}
            html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
            body{margin:0 auto;padding:1.5rem 1rem 4rem;max-width:76rem;background:var(--ground);color:var(--text);\
            font:1rem/1.55 system-ui,sans-serif;overflow-wrap:break-word}
            h1{font-size:1.7rem;line-height:1.2;margin:0 0 .6rem}
            h2{font-size:1.25rem;line-height:1.3;margin:2.8rem 0 .8rem;padding-top:.5rem;border-top:1px solid var(--rule)}
            h3{font-size:1rem;margin:0 0 .4rem}
            p,ul,ol{max-width:44rem;margin:.6rem 0}
            ul,nav ol{padding-left:1.3rem}
            li{margin:.2rem 0}
            a{color:var(--accent)}
            :target{scroll-margin-top:4rem}
            .lead{font-size:1.1rem}
            nav{margin:1.4rem 0;color:var(--soft)}
            nav ol{columns:18rem 2;max-width:none}
            .answers{margin:.6rem 0}
            .answers>div{display:grid;grid-template-columns:12rem minmax(0,44rem);column-gap:1.2rem;padding:.5rem 0;\
            border-bottom:1px solid var(--rule)}
            .answers>div:last-child{border:0}
            .answers dd{grid-column:2;margin:0}.answers dd+dd{margin-top:.4rem}
            figure{margin:1.4rem 0}
            figcaption{font-weight:600;margin-bottom:.4rem}
            .note{color:var(--soft);font-size:.92rem;margin:.2rem 0 .5rem}
            .wide{overflow-x:auto;max-width:100%}
            table{border-collapse:collapse;font-size:.9rem;line-height:1.35;font-variant-numeric:tabular-nums lining-nums}
            th,td{padding:.28rem .6rem .28rem 0;text-align:left;vertical-align:top;border-bottom:1px solid var(--rule)}
            th{font-weight:600;vertical-align:bottom;border-bottom-color:var(--soft)}
            td{white-space:nowrap;unicode-bidi:plaintext}
            td.t{white-space:normal;min-width:14rem;max-width:26rem}
            th.n,td.n{text-align:right}
            .unit{display:block;color:var(--soft);font-weight:400;white-space:nowrap}
            details{margin:.3rem 0}
            summary{cursor:pointer;padding:.25rem 0}
            details>div{padding:0 0 .6rem 1rem;border-left:2px solid var(--rule)}
            .numbers>summary{color:var(--soft);font-size:.92rem}
            .paper{display:none;color:var(--soft)}
            pre{overflow-x:auto;max-width:100%;padding:.7rem .9rem;background:var(--shade);font-size:.85rem;line-height:1.4}
            code{background:var(--shade);font-size:.92em;overflow-wrap:anywhere}pre code{background:none;font-size:inherit}
            blockquote{margin:.6rem 0;padding-left:1rem;border-left:2px solid var(--rule);max-width:44rem}
            .cautions{margin:1.4rem 0;padding:.8rem 1rem;border-left:4px solid var(--accent);\
            background:var(--shade);max-width:46rem}
            @media screen and (max-width:600px){body{padding-top:1rem}h1{font-size:1.4rem}details>div{padding-left:.6rem}\
            .answers>div{display:block}\
            .wide table{width:max-content;max-width:none}table{font-size:.78rem}th,td{padding-right:.3rem}}
            @media screen and (max-width:380px){table{font-size:.75rem}th,td{padding-right:.2rem}}
            """;
    private static final String PAPER = """
            @media print{
            @page{margin:16mm 14mm}
            html{font-size:10pt}
            body{padding:0;max-width:none;line-height:1.4}
            h2,h3,figcaption,summary,.note,p:has(+figure){break-after:avoid}
            nav,.folds:not(:has(>details[open])){display:none}
            p,li,dd{orphans:3;widows:3}
            .answers>div,tr,.cautions,.picture,.note,p:has(+figure),details .table,table:not(:has(tr:nth-child(19))){break-inside:avoid}
            thead{display:table-header-group}
            .wide,pre{overflow:visible}
            pre{white-space:pre-wrap}
            table{font-size:8.5pt}
            table:has(th:nth-child(8)){font-size:7.5pt}table:has(th:nth-child(11)){font-size:7pt}
            table:has(th:nth-child(14)){font-size:6pt}
            table:has(th:nth-child(9)) :is(th,td){padding-right:.5em}
            th,td{padding-right:.8em}td.t{min-width:8em}td.w{white-space:normal}
            .crowded:not(:has(tr:nth-child(19))){grid-template-columns:repeat(24,minmax(min-content,max-content))}
            a{color:inherit;text-decoration:none}
            .picture>svg{max-width:10.6cm;max-height:22cm}
            details:not([open]){display:none}
            .paper{display:block}
            .cautions{border:1px solid var(--soft)}
            }""";

    /** A table that is longer than a sheet keeps its rows plain, so that its heading can stand on each. */
    static final String CSS = SCREEN + below("@media screen", ".crowded")
            + below("@media print", ".crowded:not(:has(tr:nth-child(19)))")
            + below("@media screen and (max-width:600px)", ".wide>table")
            + "@media screen and (max-width:600px){.b{order:1}\n"
            + "td:first-child{white-space:normal;max-width:10rem}thead:has(.b)+tbody td:first-child{max-width:4.5rem}}\n" + PAPER;

    private static final int LONGEST_TITLE = 80;

    private PageStyle() {
    }

    /** What stands at the foot of each printed sheet, so that one that is taken out of its file still says what it is. */
    static String footOfSheets(String title) {
        StringBuilder words = new StringBuilder();
        // A title may hold a stranger's words: whatever is no letter and no digit is written as a number, which ends no string.
        IntStream.concat(title.codePoints().limit(LONGEST_TITLE), ". Statistical estimates, no appraisal.".codePoints())
                .filter(c -> c >= ' ').forEach(c -> {
            if (Character.isLetterOrDigit(c)) {
                words.appendCodePoint(c);
            } else {
                words.append('\\').append(Integer.toHexString(c)).append(' ');
            }
        });
        return "\n@page{@bottom-left{content:\"" + words + "\";font:7.5pt system-ui,sans-serif;color:#5b636d}"
                + "@bottom-right{content:counter(page) \" / \" counter(pages);font:7.5pt system-ui,sans-serif;color:#5b636d}}";
    }

    /** Tables whose sentences stand below the other cells of their row; where a browser cannot do that they stay beside them. */
    private static String below(String where, String tables) {
        return where + "{@supports (grid-template-columns:subgrid){" + """
                T{display:grid;grid-template-columns:repeat(24,max-content);justify-content:start}
                T>*,T tr{display:grid;grid-template-columns:subgrid;grid-column:1/-1}
                T tr{border-bottom:1px solid var(--rule)}
                T thead tr{border-color:var(--soft)}
                T th,T td{border:0}
                T th{width:min-content;align-self:end}
                T th.n{justify-self:end}
                T .t{grid-column:1/-1;order:2;position:sticky;left:0;width:min(44rem,calc(100vw - 4rem))}
                T .t{min-width:0;max-width:none;padding-top:0}
                T .t:empty{display:none}
                """.replace("T", tables) + "}}\n";
    }
}
