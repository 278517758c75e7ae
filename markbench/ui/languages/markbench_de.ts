<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name></name>
    <message>
        <source>Find an action</source>
        <translation>Aktion suchen</translation>
    </message>
    <message>
        <source>help keys commands</source>
        <translation>hilfe tasten befehle</translation>
    </message>
    <message>
        <source>Open a class folder…</source>
        <translation>Klassenordner öffnen…</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Larger text</source>
        <translation>Größere Schrift</translation>
    </message>
    <message>
        <source>Smaller text</source>
        <translation>Kleinere Schrift</translation>
    </message>
    <message>
        <source>Text at its usual size</source>
        <translation>Schrift in üblicher Größe</translation>
    </message>
    <message>
        <source>Text at twice its size</source>
        <translation>Schrift in doppelter Größe</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>Light or dark as the system</source>
        <translation>Hell oder dunkel wie das System</translation>
    </message>
    <message>
        <source>Interface language: {name}</source>
        <translation>Sprache der Oberfläche: {name}</translation>
    </message>
    <message>
        <source>settings translation</source>
        <translation>einstellungen sprache übersetzung</translation>
    </message>
    <message>
        <source>Write the workbook and the mark sheet</source>
        <translation>Arbeitsmappe und Punkteliste schreiben</translation>
    </message>
    <message>
        <source>export print Excel csv</source>
        <translation>export drucken Excel csv</translation>
    </message>
    <message>
        <source>Blind marking: hide who is who, or show it</source>
        <translation>Anonym bewerten: Namen verbergen oder zeigen</translation>
    </message>
    <message>
        <source>Close the class</source>
        <translation>Klasse schließen</translation>
    </message>
    <message>
        <source>Leave Markbench</source>
        <translation>Markbench beenden</translation>
    </message>
    <message>
        <source>quit exit end</source>
        <translation>beenden schließen ende</translation>
    </message>
    <message>
        <source>Find a learner</source>
        <translation>Name suchen</translation>
    </message>
    <message>
        <source>Open the chosen learner</source>
        <translation>Gewählte Person öffnen</translation>
    </message>
    <message>
        <source>Only those changed since marked</source>
        <translation>Nur seit der Bewertung Geänderte</translation>
    </message>
    <message>
        <source>Show everybody</source>
        <translation>Alle zeigen</translation>
    </message>
    <message>
        <source>Sort again</source>
        <translation>Neu ordnen</translation>
    </message>
    <message>
        <source>Ask again for pieces of the chosen learners</source>
        <translation>Die Gewählten noch einmal um Stücke bitten</translation>
    </message>
    <message>
        <source>Copy the list of what is missing from the chosen learners</source>
        <translation>Liste kopieren: was den Gewählten fehlt</translation>
    </message>
    <message>
        <source>None chosen any more</source>
        <translation>Auswahl aufheben</translation>
    </message>
    <message>
        <source>A step back: clear the search, close what is to settle</source>
        <translation>Ein Schritt zurück: Suche leeren, Klärung schließen</translation>
    </message>
    <message>
        <source>Settle whose files are whose</source>
        <translation>Zuordnung der Dateien klären</translation>
    </message>
    <message>
        <source>Only those not yet marked</source>
        <translation>Nur noch nicht Bewertete</translation>
    </message>
    <message>
        <source>zoom font</source>
        <translation>zoom schrift größe</translation>
    </message>
    <message>
        <source>theme colours night</source>
        <translation>thema farben nacht</translation>
    </message>
    <message>
        <source>Read the folder again</source>
        <translation>Ordner neu einlesen</translation>
    </message>
    <message>
        <source>refresh reload new files</source>
        <translation>auffrischen neu laden neue dateien</translation>
    </message>
    <message>
        <source>Only those to look at</source>
        <translation>Nur Anzusehende</translation>
    </message>
    <message>
        <source>Only those with something missing</source>
        <translation>Nur Unvollständige</translation>
    </message>
    <message>
        <source>Only those outside the dates</source>
        <translation>Nur außerhalb der Frist</translation>
    </message>
    <message>
        <source>Order: most questions first</source>
        <translation>Reihenfolge: meiste Fragen zuerst</translation>
    </message>
    <message>
        <source>Order: by name</source>
        <translation>Reihenfolge: nach Namen</translation>
    </message>
    <message>
        <source>Order: highest mark first</source>
        <translation>Reihenfolge: höchste Punkte zuerst</translation>
    </message>
    <message>
        <source>Order: least marked first</source>
        <translation>Reihenfolge: wenigste bewertet zuerst</translation>
    </message>
    <message>
        <source>Order: by time of hand-in</source>
        <translation>Reihenfolge: nach Abgabezeit</translation>
    </message>
    <message>
        <source>Order: as in the class list</source>
        <translation>Reihenfolge: wie in der Klassenliste</translation>
    </message>
    <message>
        <source>Back to the class</source>
        <translation>Zurück zur Klasse</translation>
    </message>
    <message>
        <source>Next learner</source>
        <translation>Nächste Person</translation>
    </message>
    <message>
        <source>Learner before</source>
        <translation>Vorige Person</translation>
    </message>
    <message>
        <source>Accept this draft</source>
        <translation>Diesen Entwurf übernehmen</translation>
    </message>
    <message>
        <source>Accept all drafts</source>
        <translation>Alle Entwürfe übernehmen</translation>
    </message>
    <message>
        <source>Keep this mark although its draft has changed</source>
        <translation>Diese Bewertung behalten, obwohl ihr Entwurf sich geändert hat</translation>
    </message>
    <message>
        <source>See what changed since it was marked</source>
        <translation>Zeigen, was sich seit der Bewertung geändert hat</translation>
    </message>
    <message>
        <source>Mark again what changed since it was marked</source>
        <translation>Neu bewerten, was sich seit der Bewertung geändert hat</translation>
    </message>
    <message>
        <source>Leave the mark as it is though the work changed</source>
        <translation>Bewertung lassen, obwohl die Arbeit sich geändert hat</translation>
    </message>
    <message>
        <source>Next criterion</source>
        <translation>Nächstes Kriterium</translation>
    </message>
    <message>
        <source>Criterion before</source>
        <translation>Voriges Kriterium</translation>
    </message>
    <message>
        <source>Write to the learner</source>
        <translation>Rückmeldung schreiben</translation>
    </message>
    <message>
        <source>Private note on this criterion</source>
        <translation>Private Notiz zum Kriterium</translation>
    </message>
    <message>
        <source>Private note on this learner</source>
        <translation>Private Notiz zur Person</translation>
    </message>
    <message>
        <source>Go to the readings</source>
        <translation>Zu den Messwerten</translation>
    </message>
    <message>
        <source>Go to the questions</source>
        <translation>Zu den Fragen</translation>
    </message>
    <message>
        <source>Open the evidence</source>
        <translation>Belege öffnen</translation>
    </message>
    <message>
        <source>The learner&apos;s own table: point at columns, type readings</source>
        <translation>Eigene Tabelle der Person: Spalten zeigen, Messwerte tippen</translation>
    </message>
    <message>
        <source>Show the likeliest explanation in the graph</source>
        <translation>Wahrscheinlichste Erklärung im Graphen zeigen</translation>
    </message>
    <message>
        <source>Agree with the likeliest explanation</source>
        <translation>Der wahrscheinlichsten Erklärung zustimmen</translation>
    </message>
    <message>
        <source>Leave out the current timing</source>
        <translation>Diese Zeit weglassen</translation>
    </message>
    <message>
        <source>Save the graph as a picture…</source>
        <translation>Graph als Bild speichern…</translation>
    </message>
    <message>
        <source>Level {n} of this criterion</source>
        <translation>Stufe {n} dieses Kriteriums</translation>
    </message>
    <message>
        <source>Move this sentence up</source>
        <translation>Diesen Satz nach oben</translation>
    </message>
    <message>
        <source>Move this sentence down</source>
        <translation>Diesen Satz nach unten</translation>
    </message>
    <message>
        <source>Leave this sentence out</source>
        <translation>Diesen Satz weglassen</translation>
    </message>
    <message>
        <source>Bring a sentence back</source>
        <translation>Einen Satz zurückholen</translation>
    </message>
    <message>
        <source>Put in the phrase on offer</source>
        <translation>Angebotenen Baustein einsetzen</translation>
    </message>
    <message>
        <source>Keep this sentence as a phrase</source>
        <translation>Diesen Satz als Baustein merken</translation>
    </message>
    <message>
        <source>Check the spelling: next word</source>
        <translation>Rechtschreibung: nächstes Wort</translation>
    </message>
    <message>
        <source>Interface language</source>
        <translation>Sprache der Oberfläche</translation>
    </message>
    <message>
        <source>From its next start, Markbench will speak this language: {name}.</source>
        <translation>Ab dem nächsten Start spricht Markbench diese Sprache: {name}.</translation>
    </message>
    <message>
        <source>Difference against mean</source>
        <translation>Differenz über Mittelwert</translation>
    </message>
    <message>
        <source>The figures are being worked out…</source>
        <translation>Die Zahlen werden berechnet…</translation>
    </message>
    <message>
        <source>No learner has both totals yet.</source>
        <translation>Noch hat niemand beide Gesamtpunkte.</translation>
    </message>
    <message>
        <source>▲ second higher, ▼ second lower, ● the same</source>
        <translation>▲ zweite höher, ▼ zweite niedriger, ● gleich</translation>
    </message>
    <message>
        <source>larger where several learners stand at one point</source>
        <translation>größer, wo mehrere Lernende auf einem Punkt stehen</translation>
    </message>
    <message>
        <source>solid: mean {m:+.2f} marks</source>
        <translation>durchgezogen: Mittel {m:+.2f} Punkte</translation>
    </message>
    <message>
        <source>dashed: limits of agreement {low:+.2f} and {high:+.2f}, hatched: their 95 % intervals</source>
        <translation>gestrichelt: Übereinstimmungsgrenzen {low:+.2f} und {high:+.2f}, schraffiert: ihre 95-%-Intervalle</translation>
    </message>
    <message>
        <source>mean of both totals / marks</source>
        <translation>Mittel beider Gesamtpunkte / Punkte</translation>
    </message>
    <message>
        <source>second − first / marks</source>
        <translation>zweite − erste / Punkte</translation>
    </message>
    <message>
        <source>{who}: second − first {d:+g} marks, mean {m:g}</source>
        <translation>{who}: zweite − erste {d:+g} Punkte, Mittel {m:g}</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Weiteres</translation>
    </message>
    <message>
        <source>Drift of marking</source>
        <translation>Verlauf der Bewertung</translation>
    </message>
    <message>
        <source>Nothing is marked yet.</source>
        <translation>Noch ist nichts bewertet.</translation>
    </message>
    <message>
        <source>Line: mean of {run} neighbours.</source>
        <translation>Linie: Mittel über {run} Nachbarn.</translation>
    </message>
    <message>
        <source>First half {a}, second half {b} marks on average.</source>
        <translation>Erste Hälfte {a}, zweite Hälfte {b} Punkte im Mittel.</translation>
    </message>
    <message>
        <source>Done again: {what}</source>
        <translation>Wiederholt: {what}</translation>
    </message>
    <message>
        <source>Taken back: {what}</source>
        <translation>Zurückgenommen: {what}</translation>
    </message>
    <message>
        <source>The marks are signed off. Reopen them?</source>
        <translation>Die Bewertung ist unterschrieben. Wieder öffnen?</translation>
    </message>
    <message>
        <source>The journal keeps that they were signed off, and that it was taken back.</source>
        <translation>Im Journal bleibt, dass unterschrieben und dass es zurückgenommen wurde.</translation>
    </message>
    <message>
        <source>Reopen them</source>
        <translation>Wieder öffnen</translation>
    </message>
    <message>
        <source>Leave them signed off</source>
        <translation>Unterschrieben lassen</translation>
    </message>
    <message>
        <source>The marks were signed off before. Sign them off again?</source>
        <translation>Die Bewertung war vorher unterschrieben. Wieder unterschreiben?</translation>
    </message>
    <message>
        <source>They cannot be changed then until they are reopened.</source>
        <translation>Sie lässt sich dann nicht ändern, bis sie wieder geöffnet wird.</translation>
    </message>
    <message>
        <source>Sign them off</source>
        <translation>Unterschreiben</translation>
    </message>
    <message>
        <source>Leave them open</source>
        <translation>Offen lassen</translation>
    </message>
    <message>
        <source>mark</source>
        <translation>Bewertung</translation>
    </message>
    <message>
        <source>note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>count of swings</source>
        <translation>Zählung der Schwingungen</translation>
    </message>
    <message>
        <source>mark left as it is</source>
        <translation>Bewertung belassen</translation>
    </message>
    <message>
        <source>order of marking</source>
        <translation>Reihenfolge des Bewertens</translation>
    </message>
    <message>
        <source>names shown or hidden</source>
        <translation>Namen sichtbar oder verborgen</translation>
    </message>
    <message>
        <source>phrase</source>
        <translation>Textbaustein</translation>
    </message>
    <message>
        <source>settled mark</source>
        <translation>geklärte Bewertung</translation>
    </message>
    <message>
        <source>file saved</source>
        <translation>Datei gespeichert</translation>
    </message>
    <message>
        <source>sign-off</source>
        <translation>Unterschrift</translation>
    </message>
    <message>
        <source>reopening of the marks</source>
        <translation>Wiederöffnen der Bewertung</translation>
    </message>
    <message>
        <source>marks merged</source>
        <translation>Bewertungen zusammengeführt</translation>
    </message>
    <message>
        <source>whose mark is the first</source>
        <translation>wessen Bewertung die erste ist</translation>
    </message>
    <message>
        <source>going back to a copy</source>
        <translation>Rückkehr zu einer Kopie</translation>
    </message>
    <message>
        <source>marks brought home</source>
        <translation>heimgebrachte Bewertungen</translation>
    </message>
    <message>
        <source>word remembered</source>
        <translation>gemerktes Wort</translation>
    </message>
    <message>
        <source>last step</source>
        <translation>letzter Schritt</translation>
    </message>
    <message>
        <source>{n} min</source>
        <translation>{n} min</translation>
    </message>
    <message>
        <source>{n} h</source>
        <translation>{n} h</translation>
    </message>
    <message>
        <source>{n} days</source>
        <translation>{n} Tage</translation>
    </message>
    <message>
        <source>Dotted upright: a break longer than {m} minutes ({lengths}).</source>
        <translation>Gepunktet senkrecht: eine Pause von mehr als {m} Minuten ({lengths}).</translation>
    </message>
    <message>
        <source>n = 1 mark with a draft</source>
        <translation>n = 1 Bewertung mit Entwurf</translation>
    </message>
    <message>
        <source>n = {n} marks with a draft</source>
        <translation>n = {n} Bewertungen mit Entwurf</translation>
    </message>
    <message>
        <source>mark minus draft, in the order of marking</source>
        <translation>Punkte minus Entwurf, in der Reihenfolge der Bewertung</translation>
    </message>
    <message>
        <source>marks in the order in which they were given</source>
        <translation>Bewertungen in zeitlicher Folge</translation>
    </message>
    <message>
        <source>mark − draft / marks</source>
        <translation>Bewertung − Entwurf / Punkte</translation>
    </message>
    <message>
        <source>{name}, {criterion}: {d} against the draft, {t}</source>
        <translation>{name}, {criterion}: {d} gegenüber dem Entwurf, {t}</translation>
    </message>
    <message>
        <source>Time per portfolio</source>
        <translation>Zeit je Abgabe</translation>
    </message>
    <message>
        <source>No times yet: they begin with the second decision.</source>
        <translation>Noch keine Zeiten: sie beginnen mit der zweiten Entscheidung.</translation>
    </message>
    <message>
        <source>n = {n} portfolios. The time between two decisions counts for the portfolio of the later one; breaks longer than {m} minutes are left out.</source>
        <translation>n = {n} Abgaben. Die Zeit zwischen zwei Entscheidungen zählt zur Abgabe der späteren; Pausen von mehr als {m} Minuten bleiben außer Betracht.</translation>
    </message>
    <message>
        <source>Median {a:.1f} min (dashed), {b:.0f} min in all.</source>
        <translation>Median {a:.1f} min (gestrichelt), insgesamt {b:.0f} min.</translation>
    </message>
    <message>
        <source>{name}: {t:.1f} min, {n} decisions</source>
        <translation>{name}: {t:.1f} min, {n} Entscheidungen</translation>
    </message>
    <message>
        <source>portfolios, longest first</source>
        <translation>Abgaben, längste zuerst</translation>
    </message>
    <message>
        <source>portfolios, in order of marking</source>
        <translation>Abgaben, in der Reihenfolge der Bewertung</translation>
    </message>
    <message>
        <source>time / min</source>
        <translation>Zeit / min</translation>
    </message>
    <message>
        <source>Marks by criterion</source>
        <translation>Punkte je Kriterium</translation>
    </message>
    <message>
        <source>Nobody is in the class list.</source>
        <translation>In der Klassenliste steht niemand.</translation>
    </message>
    <message>
        <source>{n_learners}; each column the learners at one level, named by its marks. Solid: marked ({marked} of {all} marks given). Dashed: draft only.</source>
        <translation>{n_learners}; jede Säule zeigt die Lernenden auf einer Stufe, benannt nach ihren Punkten. Gefüllt: bewertet ({marked} von {all} Bewertungen vergeben). Gestrichelt: nur Entwurf.</translation>
    </message>
    <message>
        <source>learners</source>
        <translation>Lernende</translation>
    </message>
    <message>
        <source>marks</source>
        <translation>Punkte</translation>
    </message>
    <message>
        <source>{n} await your eye: no draft, no mark.</source>
        <translation>{n} warten auf Ihren Blick: weder Entwurf noch Bewertung.</translation>
    </message>
    <message>
        <source>{title}, {level}: {marked} marked, {drafted} drafted</source>
        <translation>{title}, {level}: {marked} bewertet, {drafted} im Entwurf</translation>
    </message>
    <message>
        <source>Picture for slides (*.png);;Drawing for print (*.svg)</source>
        <translation>Bild für Folien (*.png);;Zeichnung für den Druck (*.svg)</translation>
    </message>
    <message>
        <source>Save picture</source>
        <translation>Bild speichern</translation>
    </message>
    <message>
        <source>Spread of g</source>
        <translation>Streuung von g</translation>
    </message>
    <message>
        <source>No readings yet that give a g.</source>
        <translation>Noch keine Messwerte, aus denen g folgt.</translation>
    </message>
    <message>
        <source>{n_learners}, best estimate of g with its 95 % interval</source>
        <translation>{n_learners}, bester Schätzwert für g mit 95-%-Intervall</translation>
    </message>
    <message>
        <source>dashed: local g = {g}</source>
        <translation>gestrichelt: örtliches g = {g}</translation>
    </message>
    <message>
        <source>1 interval holds it (○ where not)</source>
        <translation>1 Intervall enthält es (○ die übrigen)</translation>
    </message>
    <message>
        <source>{n} intervals hold it (○ where not)</source>
        <translation>{n} Intervalle enthalten es (○ die übrigen)</translation>
    </message>
    <message>
        <source>median {g:.2f} m/s²</source>
        <translation>Median {g:.2f} m/s²</translation>
    </message>
    <message>
        <source>{n} beyond the axis (wedges)</source>
        <translation>{n} außerhalb der Achse (Keile)</translation>
    </message>
    <message>
        <source>{n} without readings that give one</source>
        <translation>{n} ohne auswertbare Messwerte</translation>
    </message>
    <message>
        <source>local g</source>
        <translation>örtliches g</translation>
    </message>
    <message>
        <source>{name}: g = {value}, 95 % interval {low:.2f} to {high:.2f} m/s²</source>
        <translation>{name}: g = {value}, 95-%-Intervall {low:.2f} bis {high:.2f} m/s²</translation>
    </message>
    <message>
        <source>What to teach again</source>
        <translation>Was noch einmal dran sein sollte</translation>
    </message>
    <message>
        <source>No slip stands out and no check asks. There is nothing to teach again.</source>
        <translation>Kein Versehen fällt auf, und keine Prüfung fragt nach. Es muss nichts wiederholt werden.</translation>
    </message>
    <message>
        <source>{n_learners}. A slip counts where you agreed to it or it explains the readings far better than honest scatter; a check counts where it has a question for the learner. One learner may stand behind several. These are questions, not marks.</source>
        <translation>{n_learners}. Ein Versehen zählt, wo Sie ihm zugestimmt haben oder wo es die Messwerte weit besser erklärt als ehrliche Streuung; eine Prüfung zählt, wo sie eine Frage stellt. Hinter mehreren kann dieselbe Person stehen. Das sind Fragen, keine Bewertungen.</translation>
    </message>
    <message>
        <source>{title}: {n} of {of} learners</source>
        <translation>{title}: {n} von {of} Lernenden</translation>
    </message>
    <message>
        <source>, {n} agreed by you</source>
        <translation>, bei {n} von Ihnen bestätigt</translation>
    </message>
    <message>
        <source>a slip that explains the readings</source>
        <translation>ein Versehen, das die Messwerte erklärt</translation>
    </message>
    <message>
        <source>a check that asks</source>
        <translation>eine Prüfung, die nachfragt</translation>
    </message>
    <message>
        <source>Go to the class</source>
        <translation>Zur Klasse</translation>
    </message>
    <message>
        <source>One criterion across the class</source>
        <translation>Ein Kriterium quer durch die Klasse</translation>
    </message>
    <message>
        <source>Findings of the class</source>
        <translation>Befunde der Klasse</translation>
    </message>
    <message>
        <source>Hand-ins: late, missing, extended</source>
        <translation>Abgaben: verspätet, fehlend, verlängert</translation>
    </message>
    <message>
        <source>Moderation: sample, second marks, sign-off</source>
        <translation>Zweitkorrektur: Stichprobe, zweite Bewertungen, Abschluss</translation>
    </message>
    <message>
        <source>Level {n} for this learner</source>
        <translation>Stufe {n} für diese Person</translation>
    </message>
    <message>
        <source>Accept this draft and go on</source>
        <translation>Diesen Entwurf übernehmen und weiter</translation>
    </message>
    <message>
        <source>Take this mark back to a draft</source>
        <translation>Bewertung zum Entwurf zurücknehmen</translation>
    </message>
    <message>
        <source>Write to this learner</source>
        <translation>Dieser Person schreiben</translation>
    </message>
    <message>
        <source>Next criterion for the class</source>
        <translation>Nächstes Kriterium der Klasse</translation>
    </message>
    <message>
        <source>Criterion before for the class</source>
        <translation>Voriges Kriterium der Klasse</translation>
    </message>
    <message>
        <source>Choose the order of marking</source>
        <translation>Reihenfolge des Bewertens wählen</translation>
    </message>
    <message>
        <source>Shuffle the order of marking</source>
        <translation>Reihenfolge des Bewertens mischen</translation>
    </message>
    <message>
        <source>Shuffle the order of every criterion</source>
        <translation>Reihenfolge jedes Kriteriums mischen</translation>
    </message>
    <message>
        <source>Open this learner&apos;s whole sheet</source>
        <translation>Ganzes Blatt dieser Person öffnen</translation>
    </message>
    <message>
        <source>Accept the chosen pictures</source>
        <translation>Gewählte Bilder annehmen</translation>
    </message>
    <message>
        <source>Call the chosen pictures unreadable</source>
        <translation>Gewählte Bilder als unlesbar vermerken</translation>
    </message>
    <message>
        <source>Ask for the chosen pictures again</source>
        <translation>Gewählte Bilder erneut erbitten</translation>
    </message>
    <message>
        <source>Open the chosen picture</source>
        <translation>Gewähltes Bild öffnen</translation>
    </message>
    <message>
        <source>Go to the set-up photos</source>
        <translation>Zu den Aufbaufotos</translation>
    </message>
    <message>
        <source>Only what is not yet judged</source>
        <translation>Nur noch nicht Beurteiltes</translation>
    </message>
    <message>
        <source>Contact sheet: everybody’s set-up photo and video</source>
        <translation>Bilderbogen: Aufbaufoto und Video von allen</translation>
    </message>
    <message>
        <source>Go to the videos</source>
        <translation>Zu den Videos</translation>
    </message>
    <message>
        <source>Only videos that were not measured</source>
        <translation>Nur nicht gemessene Videos</translation>
    </message>
    <message>
        <source>Only where a photo or a video is missing</source>
        <translation>Nur wo ein Foto oder Video fehlt</translation>
    </message>
    <message>
        <source>Go to the learners behind it</source>
        <translation>Zu den Lernenden dahinter</translation>
    </message>
    <message>
        <source>Time per portfolio: in order of marking or longest first</source>
        <translation>Zeit je Abgabe: in der Reihenfolge der Bewertung oder längste zuerst</translation>
    </message>
    <message>
        <source>Only those late</source>
        <translation>Nur Verspätete</translation>
    </message>
    <message>
        <source>Only those with nothing yet</source>
        <translation>Nur ohne jede Abgabe</translation>
    </message>
    <message>
        <source>Only those handed in again</source>
        <translation>Nur erneut Abgegebene</translation>
    </message>
    <message>
        <source>Only those with a piece wanted again</source>
        <translation>Nur mit erneut erbetenem Stück</translation>
    </message>
    <message>
        <source>Only those given more time</source>
        <translation>Nur mit Verlängerung</translation>
    </message>
    <message>
        <source>Choose all learners shown</source>
        <translation>Alle gezeigten Lernenden wählen</translation>
    </message>
    <message>
        <source>Choose what the reminder asks for</source>
        <translation>Wählen, worum die Erinnerung bittet</translation>
    </message>
    <message>
        <source>Copy the reminder to the chosen learners</source>
        <translation>Erinnerung an die Gewählten kopieren</translation>
    </message>
    <message>
        <source>Choose a last day</source>
        <translation>Letzten Tag wählen</translation>
    </message>
    <message>
        <source>Give the chosen learners until that day</source>
        <translation>Den Gewählten bis zu diesem Tag Zeit geben</translation>
    </message>
    <message>
        <source>Take the extension of the chosen learners back</source>
        <translation>Verlängerung der Gewählten zurücknehmen</translation>
    </message>
    <message>
        <source>Draw the sample for the moderator</source>
        <translation>Stichprobe für die Zweitkorrektur ziehen</translation>
    </message>
    <message>
        <source>Make the moderation pack…</source>
        <translation>Zweitkorrektur-Paket packen…</translation>
    </message>
    <message>
        <source>Merge a moderator&apos;s reply…</source>
        <translation>Antwort der Zweitkorrektur übernehmen…</translation>
    </message>
    <message>
        <source>Go to what is open between the markers</source>
        <translation>Zu den offenen Punkten der Korrekturen</translation>
    </message>
    <message>
        <source>Go to the grade boundaries</source>
        <translation>Zu den Notengrenzen</translation>
    </message>
    <message>
        <source>Go to the adjustment</source>
        <translation>Zur Anpassung</translation>
    </message>
    <message>
        <source>Go to the sign-off</source>
        <translation>Zum Abschluss</translation>
    </message>
    <message>
        <source>Write the moderation record…</source>
        <translation>Protokoll der Zweitkorrektur schreiben…</translation>
    </message>
    <message>
        <source>Go to the agreement of the markers</source>
        <translation>Zur Übereinstimmung der Korrigierenden</translation>
    </message>
    <message>
        <source>Write what goes out, feedback sheets and all</source>
        <translation>Alles Ausgehende schreiben, mit Rückmeldebögen</translation>
    </message>
    <message>
        <source>local g {g:.2f} m/s²</source>
        <translation>örtliches g {g:.2f} m/s²</translation>
    </message>
    <message>
        <source>without the slip</source>
        <translation>ohne das Versehen</translation>
    </message>
    <message>
        <source>no line: two different lengths are needed</source>
        <translation>keine Gerade: zwei verschiedene Längen nötig</translation>
    </message>
    <message>
        <source>line: g = {g:.2f} m/s², ± unknown</source>
        <translation>Gerade: g = {g:.2f} m/s², ± unbekannt</translation>
    </message>
    <message>
        <source>line: g = {value}</source>
        <translation>Gerade: g = {value}</translation>
    </message>
    <message>
        <source>Not measured: {why}.</source>
        <translation>Nicht gemessen: {why}.</translation>
    </message>
    <message>
        <source>{n} complete swings</source>
        <translation>{n} volle Schwingungen</translation>
    </message>
    <message>
        <source>{n} complete swings by your count, {m} marked</source>
        <translation>{n} volle Schwingungen nach Ihrer Zählung, {m} markiert</translation>
    </message>
    <message>
        <source>T = {value}</source>
        <translation>T = {value}</translation>
    </message>
    <message>
        <source>begins at ({angle})° from the middle</source>
        <translation>beginnt bei ({angle})° aus der Mitte</translation>
    </message>
    <message>
        <source>opens into an ellipse, at least {p:.0f} % as wide as long</source>
        <translation>öffnet sich zur Ellipse, mindestens {p:.0f} % so breit wie lang</translation>
    </message>
    <message>
        <source>Fits {length}, where the table gives T = {t:.3f} s: the video and the table agree.</source>
        <translation>Passt zu {length}, wo die Tabelle T = {t:.3f} s angibt: Video und Tabelle stimmen überein.</translation>
    </message>
    <message>
        <source>No period of the table agrees. At {length} the video’s T is {ratio} of the table’s {t:.3f} s</source>
        <translation>Keine Schwingungsdauer der Tabelle passt. Bei {length} ist T im Video das {ratio}-Fache der {t:.3f} s aus der Tabelle</translation>
    </message>
    <message>
        <source>as when each passage, there or back, was counted as a swing</source>
        <translation>wie wenn jeder Durchgang, hin oder her, als Schwingung gezählt wurde</translation>
    </message>
    <message>
        <source>as when one swing fewer went by than was written</source>
        <translation>wie wenn es eine Schwingung weniger war als notiert</translation>
    </message>
    <message>
        <source>as when one swing more went by than was written</source>
        <translation>wie wenn es eine Schwingung mehr war als notiert</translation>
    </message>
    <message>
        <source>and no half swing or miscount by one brings them together</source>
        <translation>und weder eine halbe Schwingung noch ein Verzählen um eins bringt sie zusammen</translation>
    </message>
    <message>
        <source>Levels, highest first</source>
        <translation>Stufen, höchste zuerst</translation>
    </message>
    <message>
        <source>Add a level</source>
        <translation>Stufe hinzufügen</translation>
    </message>
    <message>
        <source>Sentences to the learner</source>
        <translation>Sätze für die Rückmeldung</translation>
    </message>
    <message>
        <source>Add a sentence</source>
        <translation>Satz hinzufügen</translation>
    </message>
    <message>
        <source>Title of the criterion</source>
        <translation>Titel des Kriteriums</translation>
    </message>
    <message>
        <source>Short name, for files</source>
        <translation>Kurzname, für Dateien</translation>
    </message>
    <message>
        <source>for your eye alone</source>
        <translation>nur selbst ansehen</translation>
    </message>
    <message>
        <source>No level is drafted; you look and decide.</source>
        <translation>Keine Stufe wird entworfen; Sie sehen hin und entscheiden.</translation>
    </message>
    <message>
        <source>Level {n}</source>
        <translation>Stufe {n}</translation>
    </message>
    <message>
        <source>Marks of level {n}</source>
        <translation>Punkte der Stufe {n}</translation>
    </message>
    <message>
        <source>Marks</source>
        <translation>Punkte</translation>
    </message>
    <message>
        <source>What level {n} asks for</source>
        <translation>Was Stufe {n} verlangt</translation>
    </message>
    <message>
        <source>Drafted when (level {n})</source>
        <translation>Entworfen, wenn (Stufe {n})</translation>
    </message>
    <message>
        <source>Kind of sentence {n}</source>
        <translation>Art des Satzes {n}</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Said when (sentence {n})</source>
        <translation>Gesagt, wenn (Satz {n})</translation>
    </message>
    <message>
        <source>Sentence {n}; further lines are other ways of saying it</source>
        <translation>Satz {n}; weitere Zeilen sagen es anders</translation>
    </message>
    <message>
        <source>level</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>sentence</source>
        <translation>Satz</translation>
    </message>
    <message>
        <source>Move {what} up</source>
        <translation>{what} nach oben</translation>
    </message>
    <message>
        <source>Move {what} down</source>
        <translation>{what} nach unten</translation>
    </message>
    <message>
        <source>Take {what} away</source>
        <translation>{what} entfernen</translation>
    </message>
    <message>
        <source>d MMM yyyy</source>
        <translation>d. MMM yyyy</translation>
    </message>
    <message>
        <source>d MMM</source>
        <translation>d. MMM</translation>
    </message>
    <message>
        <source>T² against L: {name}</source>
        <translation>T² über L: {name}</translation>
    </message>
    <message>
        <source>{n} readings</source>
        <translation>{n} Messwerte</translation>
    </message>
    <message>
        <source>solid: {words}</source>
        <translation>durchgezogen: {words}</translation>
    </message>
    <message>
        <source>dashed: {words}</source>
        <translation>gestrichelt: {words}</translation>
    </message>
    <message>
        <source>dotted, hollow: {words}</source>
        <translation>gepunktet, hohl: {words}</translation>
    </message>
    <message>
        <source>Below: residuals from the solid line.</source>
        <translation>Unten: Residuen zur durchgezogenen Geraden.</translation>
    </message>
    <message>
        <source>No readings were found.</source>
        <translation>Keine Messwerte gefunden.</translation>
    </message>
    <message>
        <source>residual / s²</source>
        <translation>Residuum / s²</translation>
    </message>
    <message>
        <source>{n} changes are not saved: the class folder cannot be written to.</source>
        <translation>{n} Änderungen sind nicht gespeichert: in den Klassenordner lässt sich nicht schreiben.</translation>
    </message>
    <message>
        <source>1 change is not saved: the class folder cannot be written to.</source>
        <translation>1 Änderung ist nicht gespeichert: in den Klassenordner lässt sich nicht schreiben.</translation>
    </message>
    <message>
        <source>Saved elsewhere, they can be merged into the class later, with all that was said before.</source>
        <translation>Anderswo gespeichert, lassen sie sich später in die Klasse übernehmen, mit allem zuvor Entschiedenen.</translation>
    </message>
    <message>
        <source>Save elsewhere…</source>
        <translation>Anderswo speichern…</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Noch einmal versuchen</translation>
    </message>
    <message>
        <source>Close without saving</source>
        <translation>Ohne Speichern schließen</translation>
    </message>
    <message>
        <source>Keep open</source>
        <translation>Offen lassen</translation>
    </message>
    <message>
        <source>Save elsewhere</source>
        <translation>Anderswo speichern</translation>
    </message>
    <message>
        <source>table of readings</source>
        <translation>Messwerttabelle</translation>
    </message>
    <message>
        <source>set-up photo</source>
        <translation>Aufbaufoto</translation>
    </message>
    <message>
        <source>selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>file</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>no readings</source>
        <translation>keine Messwerte</translation>
    </message>
    <message>
        <source>1 photo to be told apart</source>
        <translation>1 Foto zu unterscheiden</translation>
    </message>
    <message>
        <source>{n} photos to be told apart</source>
        <translation>{n} Fotos zu unterscheiden</translation>
    </message>
    <message>
        <source>g {value} m/s²</source>
        <translation>g {value} m/s²</translation>
    </message>
    <message>
        <source>lengths {value}</source>
        <translation>Längen {value}</translation>
    </message>
    <message>
        <source>timings each {value}</source>
        <translation>Zeiten je {value}</translation>
    </message>
    <message>
        <source>timings {value}</source>
        <translation>Zeiten {value}</translation>
    </message>
    <message>
        <source>swings {value}</source>
        <translation>Schwingungen {value}</translation>
    </message>
    <message>
        <source>ratio {value}</source>
        <translation>Verhältnis {value}</translation>
    </message>
    <message>
        <source>scatter {value}</source>
        <translation>Streuung {value}</translation>
    </message>
    <message>
        <source>departing {value}</source>
        <translation>abweichend {value}</translation>
    </message>
    <message>
        <source>worked out {value} of 4</source>
        <translation>ausgerechnet {value} von 4</translation>
    </message>
    <message>
        <source>wrong {value}</source>
        <translation>falsch {value}</translation>
    </message>
    <message>
        <source>points {value}</source>
        <translation>Punkte im Graphen {value}</translation>
    </message>
    <message>
        <source>far off {value}</source>
        <translation>weit daneben {value}</translation>
    </message>
    <message>
        <source>off local g {value}</source>
        <translation>neben örtlichem g {value}</translation>
    </message>
    <message>
        <source>pieces {value}</source>
        <translation>Stücke {value}</translation>
    </message>
    <message>
        <source>even decimals</source>
        <translation>gleiche Nachkommastellen</translation>
    </message>
    <message>
        <source>uneven decimals</source>
        <translation>ungleiche Nachkommastellen</translation>
    </message>
    <message>
        <source>units in headings</source>
        <translation>Einheiten in den Köpfen</translation>
    </message>
    <message>
        <source>a unit missing</source>
        <translation>eine Einheit fehlt</translation>
    </message>
    <message>
        <source>mean</source>
        <translation>Mittelwert</translation>
    </message>
    <message>
        <source>no mean</source>
        <translation>kein Mittelwert</translation>
    </message>
    <message>
        <source>T</source>
        <translation>T</translation>
    </message>
    <message>
        <source>no T</source>
        <translation>kein T</translation>
    </message>
    <message>
        <source>T²</source>
        <translation>T²</translation>
    </message>
    <message>
        <source>no T²</source>
        <translation>kein T²</translation>
    </message>
    <message>
        <source>own g</source>
        <translation>eigenes g</translation>
    </message>
    <message>
        <source>no own g</source>
        <translation>kein eigenes g</translation>
    </message>
    <message>
        <source>worked out right</source>
        <translation>richtig ausgerechnet</translation>
    </message>
    <message>
        <source>not worked out right</source>
        <translation>nicht richtig ausgerechnet</translation>
    </message>
    <message>
        <source>short video</source>
        <translation>kurzes Video</translation>
    </message>
    <message>
        <source>A file is newer than the mark of {when}. What was marked is not known.</source>
        <translation>Eine Datei ist neuer als die Bewertung vom {when}. Was bewertet wurde, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>Changed since it was marked on {when}: {parts}.</source>
        <translation>Geändert seit der Bewertung vom {when}: {parts}.</translation>
    </message>
    <message>
        <source>another table with the same readings</source>
        <translation>andere Tabelle mit denselben Messwerten</translation>
    </message>
    <message>
        <source>readings, where none could be read before</source>
        <translation>Messwerte, wo vorher keine zu lesen waren</translation>
    </message>
    <message>
        <source>no readings any more</source>
        <translation>keine Messwerte mehr</translation>
    </message>
    <message>
        <source>the only length differs</source>
        <translation>die einzige Länge ist anders</translation>
    </message>
    <message>
        <source>{n} of {of} lengths differ</source>
        <translation>{n} von {of} Längen anders</translation>
    </message>
    <message>
        <source>1 of {of} lengths differs</source>
        <translation>1 von {of} Längen ist anders</translation>
    </message>
    <message>
        <source>added</source>
        <translation>dazugekommen</translation>
    </message>
    <message>
        <source>replaced</source>
        <translation>ersetzt</translation>
    </message>
    <message>
        <source>removed</source>
        <translation>entfernt</translation>
    </message>
    <message>
        <source>Something went wrong in Markbench itself ({kind}); what was saved is safe.</source>
        <translation>In Markbench selbst ist etwas schiefgegangen ({kind}); was gespeichert war, ist sicher.</translation>
    </message>
    <message>
        <source>The file</source>
        <translation>Die Datei</translation>
    </message>
    <message>
        <source>could not be written: the disk is full</source>
        <translation>konnte nicht geschrieben werden: Der Datenträger ist voll</translation>
    </message>
    <message>
        <source>may not be opened or written: it is locked, or not yours to write in</source>
        <translation>darf nicht geöffnet oder geschrieben werden: gesperrt oder ohne Schreibrecht</translation>
    </message>
    <message>
        <source>is not there any more, or its folder is out of reach</source>
        <translation>ist nicht mehr da, oder der Ordner ist nicht erreichbar</translation>
    </message>
    <message>
        <source>stands in the way: something of that name is there already</source>
        <translation>steht im Weg: Unter diesem Namen gibt es schon etwas</translation>
    </message>
    <message>
        <source>could not be read or written: the disk, the share or the file itself failed</source>
        <translation>konnte nicht gelesen oder geschrieben werden: Datenträger, Netzlaufwerk oder Datei haben versagt</translation>
    </message>
    <message>
        <source>adjustment of the class</source>
        <translation>Anpassung der Klasse</translation>
    </message>
    <message>
        <source>text to the learner</source>
        <translation>Text an die Person</translation>
    </message>
    <message>
        <source>last day to hand in</source>
        <translation>letzter Abgabetag</translation>
    </message>
    <message>
        <source>correction of a reading</source>
        <translation>Berichtigung eines Messwerts</translation>
    </message>
    <message>
        <source>readings typed in</source>
        <translation>eingetippte Messwerte</translation>
    </message>
    <message>
        <source>columns pointed at</source>
        <translation>gezeigte Spalten</translation>
    </message>
    <message>
        <source>whose file it is</source>
        <translation>wessen Datei es ist</translation>
    </message>
    <message>
        <source>what a file shows</source>
        <translation>was eine Datei zeigt</translation>
    </message>
    <message>
        <source>whether a file will do</source>
        <translation>ob eine Datei genügt</translation>
    </message>
    <message>
        <source>explanation agreed with</source>
        <translation>Erklärung, der zugestimmt wurde</translation>
    </message>
    <message>
        <source>sample</source>
        <translation>Stichprobe</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>zurückgenommen</translation>
    </message>
    <message>
        <source>{level} · {marks:g}</source>
        <translation>{level} · {marks:g}</translation>
    </message>
    <message>
        <source>until {day}</source>
        <translation>bis {day}</translation>
    </message>
    <message>
        <source>agrees</source>
        <translation>stimmt zu</translation>
    </message>
    <message>
        <source>asks</source>
        <translation>fragt</translation>
    </message>
    <message>
        <source>totals moved by {n:+g}</source>
        <translation>Summen um {n:+g} verschoben</translation>
    </message>
    <message>
        <source>mark again</source>
        <translation>neu bewerten</translation>
    </message>
    <message>
        <source>leave the marks</source>
        <translation>Bewertungen lassen</translation>
    </message>
    <message>
        <source>as decided then</source>
        <translation>wie damals entschieden</translation>
    </message>
    <message>
        <source>First and second marker gave the same level all {of} times.</source>
        <translation>Erst- und Zweitkorrektur gaben alle {of} Male dieselbe Stufe.</translation>
    </message>
    <message>
        <source>First and second marker gave the same level {same} times of {of}, and were never more than one level apart.</source>
        <translation>Erst- und Zweitkorrektur gaben {same} von {of} Malen dieselbe Stufe und lagen nie mehr als eine Stufe auseinander.</translation>
    </message>
    <message>
        <source>First and second marker gave the same level {same} times of {of}, and were more than one level apart {far} times.</source>
        <translation>Erst- und Zweitkorrektur gaben {same} von {of} Malen dieselbe Stufe und lagen {far} Male mehr als eine Stufe auseinander.</translation>
    </message>
    <message>
        <source>On the total, both gave the same on average.</source>
        <translation>In der Summe gaben beide im Mittel gleich viel.</translation>
    </message>
    <message>
        <source>On the total, the second marker gave {n:.1f} marks more on average.</source>
        <translation>In der Summe gab die Zweitkorrektur im Mittel {n:.1f} Punkte mehr.</translation>
    </message>
    <message>
        <source>On the total, the second marker gave {n:.1f} marks less on average.</source>
        <translation>In der Summe gab die Zweitkorrektur im Mittel {n:.1f} Punkte weniger.</translation>
    </message>
    <message>
        <source>1 learner is not fully marked</source>
        <translation>1 Person ist nicht fertig bewertet</translation>
    </message>
    <message>
        <source>{n} learners are not fully marked</source>
        <translation>{n} Lernende sind nicht fertig bewertet</translation>
    </message>
    <message>
        <source>1 learner has a draft that changed after the mark</source>
        <translation>Bei 1 Person änderte sich ein Entwurf nach der Bewertung</translation>
    </message>
    <message>
        <source>{n} learners have drafts that changed after the mark</source>
        <translation>Bei {n} Lernenden änderten sich Entwürfe nach der Bewertung</translation>
    </message>
    <message>
        <source>no day</source>
        <translation>kein Tag</translation>
    </message>
    <message>
        <source>{name}: pick a day</source>
        <translation>{name}: Tag wählen</translation>
    </message>
    <message>
        <source>Back to the usual: {value}</source>
        <translation>Zurück zum Üblichen: {value}</translation>
    </message>
    <message>
        <source>The settings you changed are not saved.</source>
        <translation>Die geänderten Einstellungen sind nicht gespeichert.</translation>
    </message>
    <message>
        <source>What you changed in the rubric is not saved.</source>
        <translation>Die Änderungen am Raster sind nicht gespeichert.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Discard</source>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Stay</source>
        <translation>Hierbleiben</translation>
    </message>
    <message>
        <source>{low:.0f} to {high:.0f} %</source>
        <translation>{low:.0f} bis {high:.0f} %</translation>
    </message>
    <message>
        <source>{n} of {of}</source>
        <translation>{n} von {of}</translation>
    </message>
    <message>
        <source>{low:.2f} to {high:.2f}</source>
        <translation>{low:.2f} bis {high:.2f}</translation>
    </message>
    <message>
        <source>n = 1 learner</source>
        <translation>n = 1 Person</translation>
    </message>
    <message>
        <source>n = {n} learners</source>
        <translation>n = {n} Lernende</translation>
    </message>
    <message>
        <source>Reading the folder again…</source>
        <translation>Der Ordner wird neu eingelesen…</translation>
    </message>
    <message>
        <source>✓ read again: nothing new</source>
        <translation>✓ neu eingelesen: nichts Neues</translation>
    </message>
    <message>
        <source>1 new file</source>
        <translation>1 neue Datei</translation>
    </message>
    <message>
        <source>{n} new files</source>
        <translation>{n} neue Dateien</translation>
    </message>
    <message>
        <source>{n} changed</source>
        <translation>{n} geändert</translation>
    </message>
    <message>
        <source>{n} gone</source>
        <translation>{n} nicht mehr da</translation>
    </message>
    <message>
        <source>brief, rubric or class list changed</source>
        <translation>Auftrag, Raster oder Klassenliste geändert</translation>
    </message>
    <message>
        <source>✓ read again: {what}</source>
        <translation>✓ neu eingelesen: {what}</translation>
    </message>
    <message>
        <source>{names} and {n} more</source>
        <translation>{names} und {n} weitere</translation>
    </message>
</context>
<context>
    <name>AboutPage</name>
    <message>
        <source>About Markbench {version}</source>
        <translation>Über Markbench {version}</translation>
    </message>
    <message>
        <source>The bench at which a physics teacher marks a class&apos;s home practicals. Free software under the MIT licence.</source>
        <translation>Der Arbeitsplatz, an dem eine Physiklehrkraft die Heimversuche einer Klasse bewertet. Freie Software unter der MIT-Lizenz.</translation>
    </message>
    <message>
        <source>What leaves this machine: nothing. Markbench opens no network connection, sends no statistics and looks for no updates. What you write out or hand on, you hand on yourself.</source>
        <translation>Was diesen Rechner verlässt: nichts. Markbench öffnet keine Netzverbindung, sendet keine Statistik und sucht keine Updates. Was Sie ausgeben oder weiterreichen, reichen Sie selbst weiter.</translation>
    </message>
    <message>
        <source>Made of</source>
        <translation>Besteht aus</translation>
    </message>
    <message>
        <source>Version</source>
        <translation>Version</translation>
    </message>
    <message>
        <source>Licence</source>
        <translation>Lizenz</translation>
    </message>
    <message>
        <source>Inside</source>
        <translation>Enthält</translation>
    </message>
    <message>
        <source>Parts and their licences</source>
        <translation>Bestandteile und ihre Lizenzen</translation>
    </message>
    <message>
        <source>Text of the licence</source>
        <translation>Text der Lizenz</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>{name} brings no text of its licence ({licence}) along.</source>
        <translation>{name} bringt keinen Text seiner Lizenz ({licence}) mit.</translation>
    </message>
</context>
<context>
    <name>AcrossPage</name>
    <message>
        <source>Criterion</source>
        <translation>Kriterium</translation>
    </message>
    <message>
        <source>Order of marking</source>
        <translation>Reihenfolge des Bewertens</translation>
    </message>
    <message>
        <source>By name</source>
        <translation>Nach Namen</translation>
    </message>
    <message>
        <source>Most questions first</source>
        <translation>Meiste Fragen zuerst</translation>
    </message>
    <message>
        <source>Shuffled</source>
        <translation>Gemischt</translation>
    </message>
    <message>
        <source>Shuffle all criteria</source>
        <translation>Alle Kriterien mischen</translation>
    </message>
    <message>
        <source>Shuffle again</source>
        <translation>Neu mischen</translation>
    </message>
    <message>
        <source>Learners</source>
        <translation>Lernende</translation>
    </message>
    <message>
        <source>Enter: go on  ·  ↑ ↓ learner  ·  ← → criterion</source>
        <translation>Enter: weiter  ·  ↑ ↓ Person  ·  ← → Kriterium</translation>
    </message>
    <message>
        <source>Digits: a level  ·  Enter: accept and go on  ·  ↑ ↓ learner  ·  ← → criterion  ·  Alt+S: shuffle  ·  Alt+Shift+S: every criterion</source>
        <translation>Ziffern: eine Stufe  ·  Eingabe: übernehmen und weiter  ·  ↑ ↓ Person  ·  ← → Kriterium  ·  Alt+S: mischen  ·  Alt+Umschalt+S: jedes Kriterium</translation>
    </message>
    <message>
        <source>Next learner</source>
        <translation>Nächste Person</translation>
    </message>
    <message>
        <source>Accept and go on</source>
        <translation>Übernehmen und weiter</translation>
    </message>
    <message>
        <source>The whole sheet</source>
        <translation>Ganzes Blatt</translation>
    </message>
    <message>
        <source>Nobody is in the class list.</source>
        <translation>In der Klassenliste steht niemand.</translation>
    </message>
    <message>
        <source>{n} of {of}</source>
        <translation>{n} von {of}</translation>
    </message>
    <message>
        <source>{n} of {of} marked</source>
        <translation>{n} von {of} bewertet</translation>
    </message>
    <message>
        <source>✓ signed off</source>
        <translation>✓ unterschrieben</translation>
    </message>
    <message>
        <source>seed {n}, recorded</source>
        <translation>Startwert {n}, festgehalten</translation>
    </message>
</context>
<context>
    <name>AdjustmentPaper</name>
    <message>
        <source>Severity and adjustment</source>
        <translation>Strenge und Anpassung</translation>
    </message>
    <message>
        <source>Learner</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Total</source>
        <translation>Gesamt</translation>
    </message>
    <message>
        <source>would be</source>
        <translation>wäre</translation>
    </message>
    <message>
        <source>Grade</source>
        <translation>Note</translation>
    </message>
    <message>
        <source>Learners whose grade an adjustment changes</source>
        <translation>Lernende, deren Note sich durch die Anpassung ändert</translation>
    </message>
    <message>
        <source>Marks to move the totals by</source>
        <translation>Punkte, um die die Gesamtpunkte verschoben werden</translation>
    </message>
    <message>
        <source>Reason for the decision</source>
        <translation>Grund der Entscheidung</translation>
    </message>
    <message>
        <source>Adjust by</source>
        <translation>Anpassen um</translation>
    </message>
    <message>
        <source>Mark the class again</source>
        <translation>Klasse neu bewerten</translation>
    </message>
    <message>
        <source>Leave the marks</source>
        <translation>Punkte belassen</translation>
    </message>
    <message>
        <source>The figures are being worked out…</source>
        <translation>Die Zahlen werden berechnet…</translation>
    </message>
    <message>
        <source>Nobody has two totals yet, so nothing can be said about severity.</source>
        <translation>Noch hat niemand zwei Gesamtpunkte; über die Strenge lässt sich nichts sagen.</translation>
    </message>
    <message>
        <source>In figures: {f}.</source>
        <translation>In Zahlen: {f}.</translation>
    </message>
    <message>
        <source>Moving by {shift:+g} changes 1 grade:</source>
        <translation>Eine Verschiebung um {shift:+g} ändert 1 Note:</translation>
    </message>
    <message>
        <source>Moving by {shift:+g} changes no grade: {why}.</source>
        <translation>Eine Verschiebung um {shift:+g} ändert keine Note: {why}.</translation>
    </message>
    <message>
        <source>the brief names no grades</source>
        <translation>der Auftrag nennt keine Noten</translation>
    </message>
    <message>
        <source>nobody is fully marked</source>
        <translation>niemand ist vollständig bewertet</translation>
    </message>
    <message>
        <source>all {of} learners were gone through one by one, and those are left alone</source>
        <translation>alle {of} Lernenden wurden einzeln durchgesehen und bleiben unberührt</translation>
    </message>
    <message>
        <source>{left} of {of} learners were gone through one by one and are left alone; the totals of the other {free} stay within their grades</source>
        <translation>{left} von {of} Lernenden wurden einzeln durchgesehen und bleiben unberührt; die Summen der übrigen {free} bleiben in ihren Noten</translation>
    </message>
    <message>
        <source>the totals of all {of} learners stay within their grades</source>
        <translation>die Summen aller {of} Lernenden bleiben in ihren Noten</translation>
    </message>
    <message>
        <source>✓ totals moved by {n:+g}</source>
        <translation>✓ Gesamtpunkte verschoben um {n:+g}</translation>
    </message>
    <message>
        <source>✓ to be marked again</source>
        <translation>✓ wird neu bewertet</translation>
    </message>
    <message>
        <source>✓ marks left as they are</source>
        <translation>✓ Punkte bleiben, wie sie sind</translation>
    </message>
    <message>
        <source>That is more than chance explains. Moving the first marker&apos;s totals by {shift:+g} may be thought about; nothing is applied by itself, and learners whose marks the moderator went through are left alone.</source>
        <translation>Das ist mehr, als der Zufall erklärt. Über eine Verschiebung der Summen der Erstkorrektur um {shift:+g} lässt sich nachdenken; von selbst geschieht nichts, und wen die Zweitkorrektur durchgesehen hat, bleibt unberührt.</translation>
    </message>
    <message>
        <source>No adjustment is proposed: it would round to no mark at all.</source>
        <translation>Keine Anpassung wird vorgeschlagen: Gerundet wäre sie gar kein Punkt.</translation>
    </message>
    <message>
        <source>No adjustment is proposed: with {n} learners, chance alone often makes as much.</source>
        <translation>Keine Anpassung wird vorgeschlagen: Bei {n} Lernenden macht der Zufall allein oft so viel aus.</translation>
    </message>
    <message>
        <source>Moving by {shift:+g} changes {n} grades:</source>
        <translation>Eine Verschiebung um {shift:+g} ändert Noten, und zwar {n}:</translation>
    </message>
</context>
<context>
    <name>AgreementPaper</name>
    <message>
        <source>Agreement of first and second marks</source>
        <translation>Übereinstimmung von Erst- und Zweitkorrektur</translation>
    </message>
    <message>
        <source>Criterion</source>
        <translation>Kriterium</translation>
    </message>
    <message>
        <source>Same level</source>
        <translation>Gleiche Stufe</translation>
    </message>
    <message>
        <source>Within one</source>
        <translation>Höchstens eine daneben</translation>
    </message>
    <message>
        <source>Kappa</source>
        <translation>Kappa</translation>
    </message>
    <message>
        <source>Agreement by criterion, each with its 95 % interval</source>
        <translation>Übereinstimmung je Kriterium, jeweils mit 95-%-Intervall</translation>
    </message>
    <message>
        <source>Agreement beyond chance: 1 is complete, 0 is what chance alone would give</source>
        <translation>Übereinstimmung über den Zufall hinaus: 1 ist vollständig, 0 ist, was der Zufall allein ergäbe</translation>
    </message>
    <message>
        <source>The total in figures: {words}.</source>
        <translation>Die Summe in Zahlen: {words}.</translation>
    </message>
    <message>
        <source>The figures are being worked out…</source>
        <translation>Die Zahlen werden berechnet…</translation>
    </message>
    <message>
        <source>Kappa is undefined: {why}.</source>
        <translation>Kappa ist nicht bestimmt: {why}.</translation>
    </message>
    <message>
        <source>Nobody has a first and a second mark yet.</source>
        <translation>Noch hat niemand eine erste und eine zweite Bewertung.</translation>
    </message>
</context>
<context>
    <name>BoundariesPaper</name>
    <message>
        <source>Grade boundaries</source>
        <translation>Notengrenzen</translation>
    </message>
    <message>
        <source>{g} from</source>
        <translation>{g} ab</translation>
    </message>
    <message>
        <source>Learner</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Total</source>
        <translation>Gesamt</translation>
    </message>
    <message>
        <source>Grade</source>
        <translation>Note</translation>
    </message>
    <message>
        <source>would be</source>
        <translation>wäre</translation>
    </message>
    <message>
        <source>Learners whose grade changes</source>
        <translation>Lernende, deren Note sich ändert</translation>
    </message>
    <message>
        <source>Back to the brief&apos;s</source>
        <translation>Zurück zum Auftrag</translation>
    </message>
    <message>
        <source>Keep in the brief</source>
        <translation>Im Auftrag festhalten</translation>
    </message>
    <message>
        <source>Least marks for grade {g}</source>
        <translation>Mindestpunkte für Note {g}</translation>
    </message>
    <message>
        <source>below</source>
        <translation>darunter</translation>
    </message>
    <message>
        <source>The brief names no grades.</source>
        <translation>Der Auftrag nennt keine Noten.</translation>
    </message>
    <message>
        <source>{n} learners would change grade; nothing is changed yet.</source>
        <translation>Bei {n} Lernenden änderte sich die Note; noch ist nichts geändert.</translation>
    </message>
    <message>
        <source>1 learner would change grade; nothing is changed yet.</source>
        <translation>Bei 1 Person änderte sich die Note; noch ist nichts geändert.</translation>
    </message>
</context>
<context>
    <name>BriefForm</name>
    <message>
        <source>One setting is not as it must be.</source>
        <translation>Eine Angabe ist nicht so, wie sie sein muss.</translation>
    </message>
    <message>
        <source>{n} settings are not as they must be.</source>
        <translation>{n} Angaben sind nicht so, wie sie sein müssen.</translation>
    </message>
    <message>
        <source>What was asked</source>
        <translation>Was verlangt war</translation>
    </message>
    <message>
        <source>Title</source>
        <translation>Titel</translation>
    </message>
    <message>
        <source>First day</source>
        <translation>Erster Tag</translation>
    </message>
    <message>
        <source>Last day</source>
        <translation>Letzter Tag</translation>
    </message>
    <message>
        <source>Lengths</source>
        <translation>Längen</translation>
    </message>
    <message>
        <source>Timings at each length</source>
        <translation>Zeitmessungen je Länge</translation>
    </message>
    <message>
        <source>Swings in a timing</source>
        <translation>Schwingungen je Zeitmessung</translation>
    </message>
    <message>
        <source>Other counts that will do</source>
        <translation>Andere zulässige Anzahlen</translation>
    </message>
    <message>
        <source>Shortest length in metres</source>
        <translation>Kürzeste Länge in Metern</translation>
    </message>
    <message>
        <source>Longest length in metres</source>
        <translation>Größte Länge in Metern</translation>
    </message>
    <message>
        <source>Longest over shortest, at least</source>
        <translation>Größte durch kürzeste Länge, mindestens</translation>
    </message>
    <message>
        <source>Height of the support in metres</source>
        <translation>Höhe der Aufhängung in Metern</translation>
    </message>
    <message>
        <source>Evidence</source>
        <translation>Belege</translation>
    </message>
    <message>
        <source>Pairs</source>
        <translation>Paare</translation>
    </message>
    <message>
        <source>Where it was measured</source>
        <translation>Wo gemessen wurde</translation>
    </message>
    <message>
        <source>Latitude in degrees</source>
        <translation>Geografische Breite in Grad</translation>
    </message>
    <message>
        <source>Height in metres</source>
        <translation>Höhe in Metern</translation>
    </message>
    <message>
        <source>Marks and words</source>
        <translation>Punkte und Wörter</translation>
    </message>
    <message>
        <source>Marks off for each day late</source>
        <translation>Punktabzug je Tag Verspätung</translation>
    </message>
    <message>
        <source>Days late counted at most</source>
        <translation>Höchstens gezählte Tage Verspätung</translation>
    </message>
    <message>
        <source>Grades</source>
        <translation>Noten</translation>
    </message>
    <message>
        <source>Language of the feedback</source>
        <translation>Sprache der Rückmeldung</translation>
    </message>
    <message>
        <source>Word for the variable chosen</source>
        <translation>Wort für die gewählte Größe</translation>
    </message>
    <message>
        <source>Word for the variable measured</source>
        <translation>Wort für die gemessene Größe</translation>
    </message>
    <message>
        <source>Word for what is kept the same</source>
        <translation>Wort für das, was gleich bleibt</translation>
    </message>
    <message>
        <source>Photos of learners in the moderation pack</source>
        <translation>Fotos von Lernenden im Zweitkorrektur-Paket</translation>
    </message>
    <message>
        <source>Words of written reports in the moderation pack</source>
        <translation>Text der Berichte im Zweitkorrektur-Paket</translation>
    </message>
    <message>
        <source>Photos and videos kept until</source>
        <translation>Fotos und Videos aufbewahren bis</translation>
    </message>
    <message>
        <source>How closely to look</source>
        <translation>Wie genau geprüft wird</translation>
    </message>
    <message>
        <source>Scatter of a hand timing in seconds</source>
        <translation>Streuung einer Handstoppung in Sekunden</translation>
    </message>
    <message>
        <source>What counts as close to g</source>
        <translation>Was als nah an g gilt</translation>
    </message>
    <message>
        <source>Leeway for the learner&apos;s arithmetic</source>
        <translation>Spielraum für die Rechnung der Person</translation>
    </message>
    <message>
        <source>Needless questions allowed</source>
        <translation>Zulässige unnötige Fragen</translation>
    </message>
</context>
<context>
    <name>BriefNotice</name>
    <message>
        <source>brief.toml cannot be read</source>
        <translation>brief.toml ist nicht lesbar</translation>
    </message>
    <message>
        <source>It will be kept as “{name}” when you begin. Here, the settings start from their defaults.</source>
        <translation>Sie wird beim Beginnen als „{name}“ aufgehoben. Die Einstellungen hier beginnen mit ihren Vorgaben.</translation>
    </message>
    <message>
        <source>Leave it in its place</source>
        <translation>An ihrem Platz lassen</translation>
    </message>
    <message>
        <source>Put it aside and go on</source>
        <translation>Beiseitelegen und weiter</translation>
    </message>
</context>
<context>
    <name>BriefPage</name>
    <message>
        <source>Save and draft again</source>
        <translation>Speichern und neu entwerfen</translation>
    </message>
    <message>
        <source>Back to the class</source>
        <translation>Zurück zur Klasse</translation>
    </message>
    <message>
        <source>Marks stay as they are; the drafts follow the brief. Your comments in brief.toml are kept.</source>
        <translation>Bewertungen bleiben, wie sie sind; die Entwürfe folgen dem Auftrag. Ihre Kommentare in brief.toml bleiben erhalten.</translation>
    </message>
    <message>
        <source>What was the class asked to do?</source>
        <translation>Was sollte die Klasse tun?</translation>
    </message>
    <message>
        <source>Table of readings…</source>
        <translation>Messwerttabelle…</translation>
    </message>
    <message>
        <source>Task sheet…</source>
        <translation>Aufgabenblatt…</translation>
    </message>
    <message>
        <source>Put it aside, save and draft again</source>
        <translation>Beiseitelegen, speichern und neu entwerfen</translation>
    </message>
    <message>
        <source>The file as it is will be kept as “{name}” beside it.</source>
        <translation>Die Datei, wie sie ist, bleibt daneben als „{name}“ erhalten.</translation>
    </message>
    <message>
        <source>Bring the changes back</source>
        <translation>Änderungen zurückholen</translation>
    </message>
    <message>
        <source>Discard the changes</source>
        <translation>Änderungen verwerfen</translation>
    </message>
    <message>
        <source>For learners, without your unsaved changes:</source>
        <translation>Für Lernende, ohne Ihre ungespeicherten Änderungen:</translation>
    </message>
    <message>
        <source>For learners:</source>
        <translation>Für Lernende:</translation>
    </message>
</context>
<context>
    <name>BriefStrip</name>
    <message>
        <source>The brief cannot be read. Until it can, every setting has its usual value.</source>
        <translation>Der Auftrag ist nicht lesbar. Bis er es ist, gilt für jede Einstellung die Vorgabe.</translation>
    </message>
    <message>
        <source>Something in the brief cannot be used as it stands.</source>
        <translation>Etwas im Auftrag ist so nicht zu gebrauchen.</translation>
    </message>
    <message>
        <source>Go to the brief</source>
        <translation>Zum Auftrag</translation>
    </message>
    <message>
        <source>and {n} more</source>
        <translation>und {n} weitere</translation>
    </message>
</context>
<context>
    <name>CardDelegate</name>
    <message>
        <source>no readings</source>
        <translation>keine Messwerte</translation>
    </message>
    <message>
        <source>draft {marks:g} / {most:g}</source>
        <translation>Entwurf {marks:g} / {most:g}</translation>
    </message>
</context>
<context>
    <name>CareDoors</name>
    <message>
        <source>Copies of this class: go back to one</source>
        <translation>Kopien dieser Klasse: zu einer zurückkehren</translation>
    </message>
    <message>
        <source>backup restore</source>
        <translation>sicherung wiederherstellen</translation>
    </message>
    <message>
        <source>Remove photos and videos after sign-off…</source>
        <translation>Fotos und Videos nach dem Abschluss entfernen…</translation>
    </message>
    <message>
        <source>delete purge films privacy</source>
        <translation>löschen videos datenschutz</translation>
    </message>
    <message>
        <source>Photos and videos past their day</source>
        <extracomment>Shown in the bar once photos and films are kept past their day.</extracomment>
        <translation>Fotos und Videos über ihre Frist</translation>
    </message>
    <message>
        <source>Mark under numbers: a copy without names, and its marks home</source>
        <translation>Unter Nummern bewerten: Kopie ohne Namen, Bewertungen zurückholen</translation>
    </message>
    <message>
        <source>About Markbench: version, licences, what leaves the machine</source>
        <translation>Über Markbench: Version, Lizenzen, was den Rechner verlässt</translation>
    </message>
    <message>
        <source>They were to be kept until {day}; {n} are still here.</source>
        <translation>Sie sollten bis {day} aufbewahrt werden; {n} sind noch da.</translation>
    </message>
</context>
<context>
    <name>ChangedStrip</name>
    <message>
        <source>See what changed</source>
        <translation>Änderungen zeigen</translation>
    </message>
    <message>
        <source>Mark again</source>
        <translation>Neu bewerten</translation>
    </message>
    <message>
        <source>The marks go back to drafts; your texts stay.</source>
        <translation>Die Bewertungen werden wieder Entwürfe; Ihre Texte bleiben.</translation>
    </message>
    <message>
        <source>Leave the mark as it is</source>
        <translation>Bewertung so lassen</translation>
    </message>
    <message>
        <source>Leave all {n} marks as they are</source>
        <translation>Alle {n} Bewertungen belassen</translation>
    </message>
    <message>
        <source>This concerns {n} of {of} marks.</source>
        <translation>Das betrifft {n} von {of} Bewertungen.</translation>
    </message>
    <message>
        <source>The marks are signed off and stand.</source>
        <translation>Die Bewertungen sind unterschrieben und gelten.</translation>
    </message>
</context>
<context>
    <name>ChangesModel</name>
    <message>
        <source>when marked:</source>
        <translation>bei der Bewertung:</translation>
    </message>
    <message>
        <source>earlier:</source>
        <translation>früher:</translation>
    </message>
    <message>
        <source>L / cm</source>
        <translation>L / cm</translation>
    </message>
    <message>
        <source>now:</source>
        <translation>jetzt:</translation>
    </message>
    <message>
        <source>changed</source>
        <translation>geändert</translation>
    </message>
    <message>
        <source>the same</source>
        <translation>gleich</translation>
    </message>
</context>
<context>
    <name>ChangesPanel</name>
    <message>
        <source>Earlier and present readings side by side</source>
        <translation>Frühere und jetzige Messwerte nebeneinander</translation>
    </message>
    <message>
        <source>What changed: {name}</source>
        <translation>Was sich geändert hat: {name}</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>Readings: {what}.</source>
        <translation>Messwerte: {what}.</translation>
    </message>
    <message>
        <source>{now} stands in place of {earlier}</source>
        <translation>{now} steht anstelle von {earlier}</translation>
    </message>
    <message>
        <source>The earlier table cannot be read any more.</source>
        <translation>Die frühere Tabelle ist nicht mehr lesbar.</translation>
    </message>
    <message>
        <source>The numbers are the same.</source>
        <translation>Die Zahlen sind dieselben.</translation>
    </message>
</context>
<context>
    <name>ChosenStrip</name>
    <message>
        <source>Ask again for…</source>
        <translation>Noch einmal bitten um…</translation>
    </message>
    <message>
        <source>Ask again for pieces of the chosen learners</source>
        <translation>Die Gewählten noch einmal um Stücke bitten</translation>
    </message>
    <message>
        <source>Copy the list</source>
        <translation>Liste kopieren</translation>
    </message>
    <message>
        <source>Copy the list of what is missing from the chosen learners</source>
        <translation>Liste kopieren: was den Gewählten fehlt</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Keine</translation>
    </message>
    <message>
        <source>None chosen any more</source>
        <translation>Auswahl aufheben</translation>
    </message>
    <message>
        <source>{n} chosen:</source>
        <translation>{n} gewählt:</translation>
    </message>
</context>
<context>
    <name>ClashRow</name>
    <message>
        <source>{criterion}: {one} gave {a}, {other} gave {b}</source>
        <translation>{criterion}: {one} gab {a}, {other} gab {b}</translation>
    </message>
    <message>
        <source>Kept as first and second mark, {basis}.</source>
        <translation>Als erste und zweite Bewertung behalten, {basis}.</translation>
    </message>
    <message>
        <source>gone</source>
        <translation>weg</translation>
    </message>
    <message>
        <source>{about}: {who} decided on a first mark of {was:g}, now {now}.</source>
        <translation>{about}: {who} entschied bei einer ersten Bewertung von {was:g}, jetzt {now}.</translation>
    </message>
    <message>
        <source>{about}: decided twice by {one}; the later decision holds.</source>
        <translation>{about}: von {one} zweimal entschieden; das Spätere gilt.</translation>
    </message>
    <message>
        <source>{about}: {one} and {other} differ; the later decision holds.</source>
        <translation>{about}: {one} und {other} sind verschieden; das Spätere gilt.</translation>
    </message>
    <message>
        <source>Whose mark is the first…</source>
        <translation>Wessen Bewertung die erste ist…</translation>
    </message>
    <message>
        <source>Whose mark is the first: {c}</source>
        <translation>Wessen Bewertung die erste ist: {c}</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>Look at the work: {c}</source>
        <translation>Arbeit ansehen: {c}</translation>
    </message>
    <message>
        <source>{what} ({who}, {when})</source>
        <translation>{what} ({who}, {when})</translation>
    </message>
    <message>
        <source>{who} shall be the first marker of {learner}, because:</source>
        <translation>{who} soll als Erstkorrektur von {learner} gelten, weil:</translation>
    </message>
    <message>
        <source>Whose mark is the first</source>
        <translation>Wessen Bewertung die erste ist</translation>
    </message>
</context>
<context>
    <name>ClassGrid</name>
    <message>
        <source>The class</source>
        <translation>Klasse</translation>
    </message>
</context>
<context>
    <name>ClassModel</name>
    <message>
        <source>changed since it was marked</source>
        <translation>seit der Bewertung geändert</translation>
    </message>
    <message>
        <source>missing: {pieces}</source>
        <translation>es fehlt: {pieces}</translation>
    </message>
    <message>
        <source>to be told apart among the photos: {pieces}</source>
        <translation>unter den Fotos noch zu unterscheiden: {pieces}</translation>
    </message>
    <message>
        <source>{look} to look at, {ask} to ask</source>
        <translation>{look} anzusehen, {ask} nachzufragen</translation>
    </message>
    <message>
        <source>marked, {n:g} of {most:g}</source>
        <translation>bewertet, {n:g} von {most:g}</translation>
    </message>
    <message>
        <source>{n} of {of} criteria marked</source>
        <translation>{n} von {of} Kriterien bewertet</translation>
    </message>
</context>
<context>
    <name>ClassPage</name>
    <message>
        <source>readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>set-up</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>Find a learner</source>
        <translation>Name suchen</translation>
    </message>
    <message>
        <source>Not yet marked</source>
        <translation>Unbewertet</translation>
    </message>
    <message>
        <source>To look at</source>
        <translation>Anzusehen</translation>
    </message>
    <message>
        <source>Something missing</source>
        <translation>Unvollständig</translation>
    </message>
    <message>
        <source>Outside the dates</source>
        <translation>Außer Frist</translation>
    </message>
    <message>
        <source>≠ Changed</source>
        <translation>≠ Geändert</translation>
    </message>
    <message>
        <source>Changed since marked</source>
        <translation>Seit der Bewertung geändert</translation>
    </message>
    <message>
        <source>also in Pictures and for the next learner</source>
        <translation>auch unter Bilder und für die nächste Person</translation>
    </message>
    <message>
        <source>Show everybody</source>
        <translation>Alle zeigen</translation>
    </message>
    <message>
        <source>Sort again</source>
        <translation>Neu ordnen</translation>
    </message>
    <message>
        <source>The cards keep their places until you ask.</source>
        <translation>Die Karten behalten ihre Plätze, bis Sie es wünschen.</translation>
    </message>
    <message>
        <source>Choose another folder…</source>
        <translation>Anderen Ordner wählen…</translation>
    </message>
    <message>
        <source>There is no learner in this folder. A class folder holds a folder for each learner, or files with their names, or one sheet for all; a class list may lie beside them.</source>
        <translation>In diesem Ordner ist niemand. Ein Klassenordner enthält einen Ordner für jede Person, Dateien mit ihren Namen oder ein Blatt für alle; eine Klassenliste kann daneben liegen.</translation>
    </message>
    <message>
        <source>To settle</source>
        <translation>Zu klären</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Close what is to settle</source>
        <translation>Klärung schließen</translation>
    </message>
    <message>
        <source>✓ list copied: {n} with something missing</source>
        <translation>✓ Liste kopiert: {n} mit Fehlendem</translation>
    </message>
    <message>
        <source>Nothing to copy: nothing is missing.</source>
        <translation>Nichts zu kopieren: Es fehlt nichts.</translation>
    </message>
    <message>
        <source>Order</source>
        <translation>Reihenfolge</translation>
    </message>
    <message>
        <source>Most questions first</source>
        <translation>Meiste Fragen zuerst</translation>
    </message>
    <message>
        <source>By name</source>
        <translation>Nach Namen</translation>
    </message>
    <message>
        <source>Highest mark first</source>
        <translation>Höchste Punkte zuerst</translation>
    </message>
    <message>
        <source>Least marked first</source>
        <translation>Wenigste bewertet zuerst</translation>
    </message>
    <message>
        <source>By time of hand-in</source>
        <translation>Nach Abgabezeit</translation>
    </message>
    <message>
        <source>As in the class list</source>
        <translation>Wie in der Klassenliste</translation>
    </message>
    <message>
        <source>Group</source>
        <translation>Gruppe</translation>
    </message>
    <message>
        <source>All groups</source>
        <translation>Alle Gruppen</translation>
    </message>
    <message>
        <source>{n} learners</source>
        <translation>{n} Lernende</translation>
    </message>
    <message>
        <source>{n} of {of} learners</source>
        <translation>{n} von {of} Lernenden</translation>
    </message>
    <message>
        <source>1 learner</source>
        <translation>1 Person</translation>
    </message>
    <message>
        <source>{n} marked</source>
        <translation>{n} bewertet</translation>
    </message>
    <message>
        <source>Nobody is found by “{text}”.</source>
        <translation>Zu „{text}“ ist niemand zu finden.</translation>
    </message>
    <message>
        <source>The search and the filters together leave nobody.</source>
        <translation>Suche und Filter zusammen lassen niemanden übrig.</translation>
    </message>
    <message>
        <source>To settle: {n}</source>
        <translation>Zu klären: {n}</translation>
    </message>
    <message>
        <source>Set aside: {n}</source>
        <translation>Beiseite: {n}</translation>
    </message>
    <message>
        <source>Graphs: T² to {t:.1f} s² against L to {l:.0f} cm; grey line: the class</source>
        <translation>Graphen: T² bis {t:.1f} s² über L bis {l:.0f} cm; graue Linie: die Klasse</translation>
    </message>
</context>
<context>
    <name>ContactGrid</name>
    <message>
        <source>Contact sheet: set-up photos and videos</source>
        <translation>Bilderbogen: Aufbaufotos und Videos</translation>
    </message>
</context>
<context>
    <name>ContactOrder</name>
    <message>
        <source>Which is it?</source>
        <translation>Welches ist es?</translation>
    </message>
    <message>
        <source>Which? 1 of {n}</source>
        <translation>Welches? 1 von {n}</translation>
    </message>
    <message>
        <source>No video</source>
        <translation>Kein Video</translation>
    </message>
    <message>
        <source>An empty file</source>
        <translation>Eine leere Datei</translation>
    </message>
    <message>
        <source>Not yet measured</source>
        <translation>Noch nicht gemessen</translation>
    </message>
    <message>
        <source>Not measured: {why}</source>
        <translation>Nicht gemessen: {why}</translation>
    </message>
    <message>
        <source>{n} swings  ·  T = {value}</source>
        <translation>{n} Schwingungen  ·  T = {value}</translation>
    </message>
    <message>
        <source>Set-up photo</source>
        <translation>Aufbaufoto</translation>
    </message>
    <message>
        <source>A photo nobody has told apart</source>
        <translation>Ein noch nicht zugeordnetes Foto</translation>
    </message>
    <message>
        <source>Video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>empty file</source>
        <translation>leere Datei</translation>
    </message>
    <message>
        <source>missing</source>
        <translation>fehlt</translation>
    </message>
</context>
<context>
    <name>ContactPage</name>
    <message>
        <source>Not yet judged</source>
        <translation>Noch nicht beurteilt</translation>
    </message>
    <message>
        <source>Video not measured</source>
        <translation>Video nicht gemessen</translation>
    </message>
    <message>
        <source>Photo or video missing</source>
        <translation>Foto oder Video fehlt</translation>
    </message>
    <message>
        <source>Show everybody</source>
        <translation>Alle zeigen</translation>
    </message>
    <message>
        <source>The search and filters of the class page hold here too; this takes them off</source>
        <translation>Suche und Filter der Klassenseite gelten auch hier; dies hebt sie auf</translation>
    </message>
    <message>
        <source>← → picture  ·  ↑ ↓ row  ·  Enter: open  ·  Shift or Ctrl: several</source>
        <translation>← → Bild  ·  ↑ ↓ Zeile  ·  Enter: öffnen  ·  Umschalt oder Strg: mehrere</translation>
    </message>
    <message>
        <source>{n} learners</source>
        <translation>{n} Lernende</translation>
    </message>
    <message>
        <source>{n} of {of} learners</source>
        <translation>{n} von {of} Lernenden</translation>
    </message>
    <message>
        <source>as on the class page</source>
        <translation>wie auf der Seite der Klasse</translation>
    </message>
    <message>
        <source>set-up photo</source>
        <translation>Aufbaufoto</translation>
    </message>
    <message>
        <source>video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>{n} videos</source>
        <translation>{n} Videos</translation>
    </message>
    <message>
        <source>{n} set-up photos</source>
        <translation>{n} Aufbaufotos</translation>
    </message>
</context>
<context>
    <name>CriteriaList</name>
    <message>
        <source>Criteria</source>
        <translation>Kriterien</translation>
    </message>
</context>
<context>
    <name>CriterionCard</name>
    <message>
        <source>Text to the learner: {c}</source>
        <extracomment>Whether a draft is accepted here; a page with a button of its own says no.</extracomment>
        <translation>Rückmeldung: {c}</translation>
    </message>
    <message>
        <source>Text to the learner</source>
        <translation>Rückmeldung</translation>
    </message>
    <message>
        <source>Private note: {c}</source>
        <translation>Private Notiz: {c}</translation>
    </message>
    <message>
        <source>Private note, never sent</source>
        <translation>Private Notiz, wird nie verschickt</translation>
    </message>
    <message>
        <source>Take the draft</source>
        <extracomment>Where Escape goes from what one writes in. Says that the draft has changed since the mark was given. Says that the text does not speak of the level that was given.</extracomment>
        <translation>Entwurf nehmen</translation>
    </message>
    <message>
        <source>Keep the mark</source>
        <translation>Bewertung behalten</translation>
    </message>
    <message>
        <source>Accept draft</source>
        <translation>Entwurf übernehmen</translation>
    </message>
    <message>
        <source>Back to draft</source>
        <translation>Zurück zum Entwurf</translation>
    </message>
    <message>
        <source>{level} · {marks:g}</source>
        <translation>{level} · {marks:g}</translation>
    </message>
    <message>
        <source>{c}: {level}, {marks:g} marks</source>
        <translation>{c}: {level}, {marks:g} Punkte</translation>
    </message>
    <message>
        <source>{c}: {level}, 1 mark</source>
        <translation>{c}: {level}, 1 Punkt</translation>
    </message>
    <message>
        <source>not saved yet</source>
        <translation>noch nicht gespeichert</translation>
    </message>
    <message>
        <source>Take {level}</source>
        <translation>{level} nehmen</translation>
    </message>
    <message>
        <source>Keep {level}</source>
        <translation>{level} behalten</translation>
    </message>
    <message>
        <source>No draft</source>
        <translation>Kein Entwurf</translation>
    </message>
    <message>
        <source>✎ draft</source>
        <translation>✎ Entwurf</translation>
    </message>
    <message>
        <source>✎ for your eye</source>
        <translation>✎ selbst ansehen</translation>
    </message>
    <message>
        <source>✓ marked by {who}, {when}</source>
        <translation>✓ bewertet: {who}, {when}</translation>
    </message>
    <message>
        <source>marked by {who}, {when}</source>
        <translation>bewertet von {who}, {when}</translation>
    </message>
    <message>
        <source>▲ There is no text to the learner yet.</source>
        <translation>▲ Noch steht kein Text an die Person da.</translation>
    </message>
    <message>
        <source>▲ The text is still the one drafted for {level}.</source>
        <translation>▲ Der Text ist noch der für {level} entworfene.</translation>
    </message>
    <message>
        <source>▲ Readings corrected since; the draft would now be {level}.</source>
        <translation>▲ Messwerte seither berichtigt; der Entwurf wäre jetzt {level}.</translation>
    </message>
    <message>
        <source>▲ Explanation agreed since; the draft would now be {level}.</source>
        <translation>▲ Erklärung seither angenommen; der Entwurf wäre jetzt {level}.</translation>
    </message>
    <message>
        <source>▲ The draft has changed since; it would now be {level}.</source>
        <translation>▲ Der Entwurf hat sich seither geändert; er wäre jetzt {level}.</translation>
    </message>
</context>
<context>
    <name>CriterionForm</name>
    <message>
        <source>praise</source>
        <translation>Lob</translation>
    </message>
    <message>
        <source>problem</source>
        <translation>Problem</translation>
    </message>
    <message>
        <source>next step</source>
        <translation>nächster Schritt</translation>
    </message>
    <message>
        <source>for your eye</source>
        <translation>selbst ansehen</translation>
    </message>
</context>
<context>
    <name>Dates</name>
    <message>
        <source>en</source>
        <translation>de</translation>
    </message>
</context>
<context>
    <name>DeedList</name>
    <message>
        <source>What would you like to do?</source>
        <translation>Was möchten Sie tun?</translation>
    </message>
    <message>
        <source>Search the actions</source>
        <translation>Aktionen durchsuchen</translation>
    </message>
    <message>
        <source>Actions</source>
        <translation>Aktionen</translation>
    </message>
    <message>
        <source>Everything that can be done here</source>
        <translation>Alles, was hier möglich ist</translation>
    </message>
    <message>
        <source>Nothing here by these words; fewer may find it.</source>
        <translation>Hier nichts mit diesen Wörtern; mit weniger findet es sich vielleicht.</translation>
    </message>
</context>
<context>
    <name>Desk</name>
    <message>
        <source>Portfolio {n}</source>
        <extracomment>The session itself, with names: for what is written out. What each of them would decide, to be shown as said and not saved.</extracomment>
        <translation>Abgabe {n}</translation>
    </message>
    <message>
        <source>Signed off {when}. Reopen: Moderation</source>
        <translation>Unterschrieben {when}. Wieder öffnen: Zweitkorrektur</translation>
    </message>
    <message>
        <source>Changes kept here until they can be saved: {n}.</source>
        <translation>Änderungen, die hier bis zum Speichern aufbewahrt werden: {n}.</translation>
    </message>
</context>
<context>
    <name>Doors</name>
    <message>
        <source>Begin a new class…</source>
        <translation>Neue Klasse anlegen…</translation>
    </message>
    <message>
        <source>Change what the class was asked to do</source>
        <translation>Auftrag der Klasse ändern</translation>
    </message>
    <message>
        <source>settings brief dates deadline grades place</source>
        <translation>einstellungen auftrag termine frist noten ort</translation>
    </message>
    <message>
        <source>Write the rubric</source>
        <translation>Bewertungsraster bearbeiten</translation>
    </message>
    <message>
        <source>criteria levels edit</source>
        <translation>kriterien stufen bearbeiten</translation>
    </message>
    <message>
        <source>Your phrases</source>
        <translation>Ihre Textbausteine</translation>
    </message>
    <message>
        <source>Leave this page</source>
        <translation>Diese Seite verlassen</translation>
    </message>
    <message>
        <source>Write a table of readings for learners…</source>
        <translation>Messwerttabelle für die Klasse schreiben…</translation>
    </message>
    <message>
        <source>template form spreadsheet</source>
        <translation>vorlage formular tabellenblatt</translation>
    </message>
    <message>
        <source>Write a task sheet for learners…</source>
        <translation>Aufgabenblatt für die Klasse schreiben…</translation>
    </message>
    <message>
        <source>print handout pdf instructions</source>
        <translation>drucken handzettel pdf anleitung</translation>
    </message>
    <message>
        <source>Choose the folder that holds the class&apos;s work</source>
        <translation>Ordner mit den Arbeiten der Klasse wählen</translation>
    </message>
    <message>
        <source>Table of readings</source>
        <translation>Messwerttabelle</translation>
    </message>
    <message>
        <source>Task sheet</source>
        <translation>Aufgabenblatt</translation>
    </message>
    <message>
        <source>✓ written: {name}</source>
        <translation>✓ geschrieben: {name}</translation>
    </message>
</context>
<context>
    <name>EvidenceLook</name>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Stop looking at photos and videos</source>
        <translation>Durchsicht der Fotos und Videos anhalten</translation>
    </message>
    <message>
        <source>Looking at photos and videos: {n} of {of}</source>
        <translation>Fotos und Videos werden durchgesehen: {n} von {of}</translation>
    </message>
</context>
<context>
    <name>EvidenceStrip</name>
    <message>
        <source>Evidence</source>
        <translation>Belege</translation>
    </message>
    <message>
        <source>Set-up</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>Selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>Which is it?</source>
        <translation>Welches?</translation>
    </message>
    <message>
        <source>Video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>Report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Anderes</translation>
    </message>
</context>
<context>
    <name>EvidenceViewer</name>
    <message>
        <source>What does it show?</source>
        <translation>Was ist zu sehen?</translation>
    </message>
    <message>
        <source>Set-up</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>Shows the set-up (S)</source>
        <translation>Zeigt den Aufbau (S)</translation>
    </message>
    <message>
        <source>Selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>Shows the learner with it (L)</source>
        <translation>Zeigt die Person mit dem Aufbau (L)</translation>
    </message>
    <message>
        <source>Swings you count</source>
        <translation>Von Ihnen gezählt</translation>
    </message>
    <message>
        <source>Swings you count in the video</source>
        <translation>Schwingungen, die Sie im Video zählen</translation>
    </message>
    <message>
        <source>Your own count stands in place of the measured one</source>
        <translation>Ihre eigene Zählung ersetzt die gemessene</translation>
    </message>
    <message>
        <source>Turn (R)</source>
        <translation>Drehen (R)</translation>
    </message>
    <message>
        <source>Closer (+)</source>
        <translation>Vergrößern (+)</translation>
    </message>
    <message>
        <source>Further (−)</source>
        <translation>Verkleinern (−)</translation>
    </message>
    <message>
        <source>Piece before (B)</source>
        <translation>Voriges Stück (B)</translation>
    </message>
    <message>
        <source>Next piece (N)</source>
        <translation>Nächstes Stück (N)</translation>
    </message>
    <message>
        <source>Close (Esc)</source>
        <translation>Schließen (Esc)</translation>
    </message>
    <message>
        <source>This picture is hidden while names are.</source>
        <translation>Dieses Bild ist verborgen, solange Namen verborgen sind.</translation>
    </message>
    <message>
        <source>Not yet measured.</source>
        <translation>Noch nicht gemessen.</translation>
    </message>
</context>
<context>
    <name>ExplanationPanel</name>
    <message>
        <source>✓ Agreed</source>
        <translation>✓ Bestätigt</translation>
    </message>
    <message>
        <source>Agree</source>
        <translation>Zustimmen</translation>
    </message>
    <message>
        <source>Two different lengths with timings are needed.</source>
        <extracomment>What stands here where there is nothing to weigh.</extracomment>
        <translation>Nötig sind zwei verschiedene Längen mit Zeiten.</translation>
    </message>
    <message>
        <source>Likely explanations</source>
        <translation>Wahrscheinliche Erklärungen</translation>
    </message>
    <message>
        <source>put right, g would be {value}</source>
        <translation>berichtigt wäre g {value}</translation>
    </message>
    <message>
        <source>It counts under Findings, among what to teach again.</source>
        <translation>Sie zählt unter Befunde, bei dem, was noch einmal dran sein sollte.</translation>
    </message>
    <message>
        <source>Questions it answers: {n}.</source>
        <translation>Fragen, die sie beantwortet: {n}.</translation>
    </message>
    <message>
        <source>The learner reads of it under “{criterion}”.</source>
        <translation>Die Person liest davon unter „{criterion}“.</translation>
    </message>
    <message>
        <source>best estimate {value}</source>
        <translation>bester Schätzwert {value}</translation>
    </message>
</context>
<context>
    <name>FeedbackEditor</name>
    <message>
        <source>Move this sentence up (Alt+↑)</source>
        <translation>Diesen Satz nach oben (Alt+↑)</translation>
    </message>
    <message>
        <source>Move this sentence down (Alt+↓)</source>
        <translation>Diesen Satz nach unten (Alt+↓)</translation>
    </message>
    <message>
        <source>Leave this sentence out (Alt+X)</source>
        <translation>Diesen Satz weglassen (Alt+X)</translation>
    </message>
    <message>
        <source>Bring a sentence back (Alt+Z)</source>
        <translation>Einen Satz zurückholen (Alt+Z)</translation>
    </message>
    <message>
        <source>Words: {n}</source>
        <translation>Wörter: {n}</translation>
    </message>
    <message>
        <source>; reads easily from about {age:.0f} years</source>
        <translation>; leicht lesbar ab etwa {age:.0f} Jahren</translation>
    </message>
    <message>
        <source>Struck: no longer true of these readings, and not sent.</source>
        <translation>Durchgestrichen: trifft auf diese Messwerte nicht mehr zu und wird nicht verschickt.</translation>
    </message>
    <message>
        <source>≈ To check (Alt+C): {words}</source>
        <translation>≈ Zu prüfen (Alt+C): {words}</translation>
    </message>
    <message>
        <source>  (Alt+Enter)</source>
        <translation>  (Alt+Enter)</translation>
    </message>
    <message>
        <source>Your phrase: {words}</source>
        <translation>Ihr Baustein: {words}</translation>
    </message>
    <message>
        <source>“{word}” is right: remember it</source>
        <translation>„{word}“ ist richtig: merken</translation>
    </message>
    <message>
        <source>Keep this sentence as a phrase (Alt+K)</source>
        <translation>Diesen Satz als Baustein merken (Alt+K)</translation>
    </message>
</context>
<context>
    <name>Field</name>
    <message>
        <source>What the practical is called on every sheet.</source>
        <translation>Wie der Versuch auf jedem Blatt heißt.</translation>
    </message>
    <message>
        <source>First day on which work could be handed in.</source>
        <translation>Erster Tag, an dem abgegeben werden konnte.</translation>
    </message>
    <message>
        <source>Last day for handing in; later work is marked as late.</source>
        <translation>Letzter Abgabetag; Späteres gilt als verspätet.</translation>
    </message>
    <message>
        <source>How many different lengths were asked for.</source>
        <translation>Wie viele verschiedene Längen verlangt waren.</translation>
    </message>
    <message>
        <source>How many times each length was to be timed.</source>
        <translation>Wie oft bei jeder Länge die Zeit zu messen war.</translation>
    </message>
    <message>
        <source>Complete swings in one timing, taken where a table does not say.</source>
        <translation>Volle Schwingungen je Zeitmessung, wenn eine Tabelle nichts sagt.</translation>
    </message>
    <message>
        <source>Counts of swings that are as good as the one asked for.</source>
        <translation>Anzahlen, die so gut sind wie die verlangte.</translation>
    </message>
    <message>
        <source>Shortest sensible length, in metres.</source>
        <translation>Kürzeste sinnvolle Länge, in Metern.</translation>
    </message>
    <message>
        <source>Longest sensible length, in metres.</source>
        <translation>Größte sinnvolle Länge, in Metern.</translation>
    </message>
    <message>
        <source>Longest length over shortest should reach this.</source>
        <translation>So viel sollte größte durch kürzeste Länge erreichen.</translation>
    </message>
    <message>
        <source>Height of the support above the floor, in metres.</source>
        <translation>Höhe der Aufhängung über dem Boden, in Metern.</translation>
    </message>
    <message>
        <source>Pieces each learner was asked for beside the readings.</source>
        <translation>Was außer den Messwerten von allen verlangt war.</translation>
    </message>
    <message>
        <source>Name of the rubric, or of a rubric file in this folder.</source>
        <translation>Name des Rasters oder einer Rasterdatei in diesem Ordner.</translation>
    </message>
    <message>
        <source>Language of the sentences to the learner.</source>
        <translation>Sprache der Sätze an die Lernenden.</translation>
    </message>
    <message>
        <source>Learners who worked as a pair: the same readings are then no question.</source>
        <translation>Lernende, die zu zweit gearbeitet haben: gleiche Messwerte werfen dann keine Frage auf.</translation>
    </message>
    <message>
        <source>Whether photos of learners go to the moderator.</source>
        <translation>Ob Fotos von Lernenden in die Zweitkorrektur gehen.</translation>
    </message>
    <message>
        <source>Whether written reports go to the moderator, as words with names taken out.</source>
        <translation>Ob Berichte in die Zweitkorrektur gehen, als Text ohne Namen.</translation>
    </message>
    <message>
        <source>Least marks for each grade; none where the class is not graded.</source>
        <translation>Mindestpunkte je Note; leer, wenn es keine Noten gibt.</translation>
    </message>
    <message>
        <source>Marks taken off the total for each day handed in late.</source>
        <translation>Punkte, die je Tag Verspätung abgezogen werden.</translation>
    </message>
    <message>
        <source>Days late that are counted at most.</source>
        <translation>So viele Tage Verspätung zählen höchstens.</translation>
    </message>
    <message>
        <source>Latitude where the class measured, in degrees, south negative.</source>
        <translation>Geografische Breite des Messorts in Grad, Süd negativ.</translation>
    </message>
    <message>
        <source>Height above the sea, in metres.</source>
        <translation>Höhe über dem Meer, in Metern.</translation>
    </message>
    <message>
        <source>The syllabus&apos;s word for the variable that is chosen.</source>
        <translation>Wort des Lehrplans für die gewählte Größe.</translation>
    </message>
    <message>
        <source>The syllabus&apos;s word for the variable that is measured.</source>
        <translation>Wort des Lehrplans für die gemessene Größe.</translation>
    </message>
    <message>
        <source>The syllabus&apos;s word for what is kept the same.</source>
        <translation>Wort des Lehrplans für das, was gleich bleibt.</translation>
    </message>
    <message>
        <source>Usual scatter of one hand timing, in seconds.</source>
        <translation>Übliche Streuung einer Handstoppung, in Sekunden.</translation>
    </message>
    <message>
        <source>How far from the local g still counts as close.</source>
        <translation>Wie weit neben dem örtlichen g noch als nah gilt.</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>How far the learner&apos;s own value may differ from ours beyond rounding.</source>
        <translation>Wie weit der eigene Wert über das Runden hinaus von unserem abweichen darf.</translation>
    </message>
    <message>
        <source>Last day on which photos and videos are kept; then you are reminded to remove them.</source>
        <translation>Letzter Tag, an dem Fotos und Videos aufbewahrt werden; danach werden Sie ans Entfernen erinnert.</translation>
    </message>
    <message>
        <source>Share of honest learners that one statistical check may trip.</source>
        <translation>Anteil ehrlicher Lernender, bei denen eine statistische Prüfung anschlagen darf.</translation>
    </message>
    <message>
        <source>photo of the set-up</source>
        <translation>Foto vom Aufbau</translation>
    </message>
    <message>
        <source>photo of the learner with it</source>
        <translation>Foto der Person mit dem Aufbau</translation>
    </message>
    <message>
        <source>any photo</source>
        <translation>irgendein Foto</translation>
    </message>
    <message>
        <source>swing video</source>
        <translation>Schwingungsvideo</translation>
    </message>
    <message>
        <source>report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>not given</source>
        <translation>ohne Angabe</translation>
    </message>
    <message>
        <source>every day counts</source>
        <translation>jeder Tag zählt</translation>
    </message>
    <message>
        <source>07 &amp; 12, 08 &amp; 09</source>
        <translation>07 &amp; 12, 08 &amp; 09</translation>
    </message>
    <message>
        <source>A = 16, B = 13</source>
        <translation>1 = 16, 2 = 13</translation>
    </message>
</context>
<context>
    <name>FigurePaper</name>
    <message>
        <source>Save…</source>
        <translation>Speichern…</translation>
    </message>
    <message>
        <source>Save picture: {t}</source>
        <translation>Bild speichern: {t}</translation>
    </message>
</context>
<context>
    <name>FilmView</name>
    <message>
        <source>Swing video</source>
        <translation>Schwingungsvideo</translation>
    </message>
    <message>
        <source>Place in the video</source>
        <translation>Stelle im Video</translation>
    </message>
    <message>
        <source>Play (Space)</source>
        <translation>Abspielen (Leertaste)</translation>
    </message>
    <message>
        <source>One frame back (,)</source>
        <translation>Ein Bild zurück (,)</translation>
    </message>
    <message>
        <source>One frame on (.)</source>
        <translation>Ein Bild vor (.)</translation>
    </message>
    <message>
        <source>Slow motion</source>
        <translation>Zeitlupe</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Tempo</translation>
    </message>
    <message>
        <source>Time from here</source>
        <translation>Ab hier messen</translation>
    </message>
    <message>
        <source>Set the clock to zero</source>
        <translation>Uhr auf null stellen</translation>
    </message>
    <message>
        <source>Opening the video…</source>
        <translation>Video wird geöffnet…</translation>
    </message>
    <message>
        <source>Pause (Space)</source>
        <translation>Pause (Leertaste)</translation>
    </message>
    <message>
        <source>{s:.2f} s · frame {n}</source>
        <translation>{s:.2f} s · Bild {n}</translation>
    </message>
    <message>
        <source> · swing {n} of {of}</source>
        <translation> · Schwingung {n} von {of}</translation>
    </message>
</context>
<context>
    <name>FindingRow</name>
    <message>
        <source>not seen in any honest learner of the trial classes</source>
        <translation>bei keinem ehrlichen Lernenden der Probeklassen gesehen</translation>
    </message>
    <message>
        <source>most honest learners are asked this</source>
        <translation>so wird auch bei ehrlicher Arbeit meist gefragt</translation>
    </message>
    <message>
        <source>about {n} honest learners in 100 are asked this</source>
        <translation>so wird auch bei ehrlicher Arbeit etwa in {n} von 100 Fällen gefragt</translation>
    </message>
    <message>
        <source>about 1 honest learner in {n} is asked this</source>
        <translation>so wird auch bei ehrlicher Arbeit etwa einmal in {n} Fällen gefragt</translation>
    </message>
    <message>
        <source>An explanation fits better than ordinary scatter: {slip}.</source>
        <translation>Eine Erklärung passt besser als gewöhnliche Streuung: {slip}.</translation>
    </message>
    <message>
        <source>✓ Explained, as agreed: {slip}</source>
        <translation>✓ Erklärt, wie zugestimmt: {slip}</translation>
    </message>
</context>
<context>
    <name>FindingsPanel</name>
    <message>
        <source>Nothing was questioned.</source>
        <translation>Keine Fragen.</translation>
    </message>
    <message>
        <source>Questions about this work: {n}</source>
        <translation>Fragen zu dieser Arbeit: {n}</translation>
    </message>
    <message>
        <source>Questions about this work: {n} open, {explained} explained</source>
        <translation>Fragen zu dieser Arbeit: {n} offen, {explained} erklärt</translation>
    </message>
    <message>
        <source>Questions about this work</source>
        <translation>Fragen zu dieser Arbeit</translation>
    </message>
</context>
<context>
    <name>FoundPage</name>
    <message>
        <source>learners</source>
        <translation>Lernende</translation>
    </message>
    <message>
        <source>of them handed something in</source>
        <translation>davon haben etwas abgegeben</translation>
    </message>
    <message>
        <source>learner</source>
        <translation>lernende Person</translation>
    </message>
    <message>
        <source>table of readings understood</source>
        <translation>Messwerttabelle verstanden</translation>
    </message>
    <message>
        <source>Choose a learner to see the files, and why they are taken for theirs.</source>
        <translation>Wählen Sie eine Person, um ihre Dateien zu sehen, und warum sie ihr zugeordnet sind.</translation>
    </message>
    <message>
        <source>struck: not there</source>
        <translation>durchgestrichen: nicht da</translation>
    </message>
    <message>
        <source>to be told apart</source>
        <translation>zu unterscheiden</translation>
    </message>
    <message>
        <source>Could not be opened</source>
        <translation>Ließ sich nicht öffnen</translation>
    </message>
    <message>
        <source>Fits nobody</source>
        <translation>Passt zu niemandem</translation>
    </message>
    <message>
        <source>and {n} more</source>
        <translation>und {n} weitere</translation>
    </message>
    <message>
        <source>Say whose it is</source>
        <translation>Sagen, wessen sie ist</translation>
    </message>
    <message>
        <source>Say whose they are</source>
        <translation>Sagen, wessen sie sind</translation>
    </message>
    <message>
        <source>tables of readings understood</source>
        <translation>Messwerttabellen verstanden</translation>
    </message>
    <message>
        <source>of {n} tables of readings understood</source>
        <translation>von {n} Messwerttabellen verstanden</translation>
    </message>
    <message>
        <source>of 1 table of readings understood</source>
        <translation>von 1 Messwerttabelle verstanden</translation>
    </message>
    <message>
        <source>photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>swing videos</source>
        <translation>Schwingungsvideos</translation>
    </message>
    <message>
        <source>swing video</source>
        <translation>Schwingungsvideo</translation>
    </message>
    <message>
        <source>reports</source>
        <translation>Berichte</translation>
    </message>
    <message>
        <source>report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>file whose owner is in doubt</source>
        <translation>Datei, deren Zugehörigkeit unklar ist</translation>
    </message>
    <message>
        <source>files whose owner is in doubt</source>
        <translation>Dateien, deren Zuordnung unsicher ist</translation>
    </message>
    <message>
        <source>files that fit nobody</source>
        <translation>Dateien, die zu niemandem passen</translation>
    </message>
    <message>
        <source>file that fits nobody</source>
        <translation>Datei, die zu niemandem passt</translation>
    </message>
    <message>
        <source>file set aside as nobody&apos;s</source>
        <translation>Datei beiseitegelegt als niemandes</translation>
    </message>
    <message>
        <source>files set aside as nobody&apos;s</source>
        <translation>Dateien beiseitegelegt als niemandes</translation>
    </message>
</context>
<context>
    <name>GraphPanel</name>
    <message>
        <source>Graph of T² against L with residuals</source>
        <extracomment>Whether it may be saved as a picture.</extracomment>
        <translation>Graph von T² über L mit Residuen</translation>
    </message>
    <message>
        <source>Save…</source>
        <translation>Speichern…</translation>
    </message>
    <message>
        <source>Save the graph as a picture</source>
        <translation>Graph als Bild speichern</translation>
    </message>
    <message>
        <source>There are no readings to draw.</source>
        <translation>Es gibt keine Messwerte zu zeichnen.</translation>
    </message>
</context>
<context>
    <name>GridModel</name>
    <message>
        <source>length</source>
        <extracomment>A cell&apos;s text as it may be seen.</extracomment>
        <translation>Länge</translation>
    </message>
    <message>
        <source>timing</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>swings</source>
        <translation>Schwingungen</translation>
    </message>
</context>
<context>
    <name>HandInModel</name>
    <message>
        <source>Learner</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Handed in</source>
        <translation>Abgegeben</translation>
    </message>
    <message>
        <source>How it stands</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Missing</source>
        <translation>Es fehlt</translation>
    </message>
    <message>
        <source>Last day</source>
        <translation>Letzter Tag</translation>
    </message>
    <message>
        <source>{day}, extended</source>
        <translation>{day}, verlängert</translation>
    </message>
    <message>
        <source>○ nothing yet</source>
        <translation>○ noch nichts</translation>
    </message>
    <message>
        <source>▲ {n} days late</source>
        <translation>▲ {n} Tage zu spät</translation>
    </message>
    <message>
        <source>▲ 1 day late</source>
        <translation>▲ 1 Tag zu spät</translation>
    </message>
    <message>
        <source>≠ changed since marked</source>
        <translation>≠ seit der Bewertung geändert</translation>
    </message>
    <message>
        <source>↻ newer than its mark</source>
        <translation>↻ neuer als die Bewertung</translation>
    </message>
    <message>
        <source>↻ handed in again</source>
        <translation>↻ erneut abgegeben</translation>
    </message>
    <message>
        <source>✗ does not open: {pieces}</source>
        <translation>✗ öffnet nicht: {pieces}</translation>
    </message>
    <message>
        <source>✗ wanted again: {pieces}</source>
        <translation>✗ erneut erbeten: {pieces}</translation>
    </message>
    <message>
        <source>◇ incomplete</source>
        <translation>◇ unvollständig</translation>
    </message>
    <message>
        <source>✓ in time</source>
        <translation>✓ pünktlich</translation>
    </message>
    <message>
        <source>✓ handed in</source>
        <translation>✓ abgegeben</translation>
    </message>
    <message>
        <source>readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>set-up</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>file</source>
        <translation>Datei</translation>
    </message>
</context>
<context>
    <name>HandInsPage</name>
    <message>
        <source>Late</source>
        <translation>Verspätet</translation>
    </message>
    <message>
        <source>Something missing</source>
        <translation>Unvollständig</translation>
    </message>
    <message>
        <source>Nothing yet</source>
        <translation>Noch nichts</translation>
    </message>
    <message>
        <source>Handed in again</source>
        <translation>Erneut abgegeben</translation>
    </message>
    <message>
        <source>Wanted again</source>
        <translation>Erneut erbeten</translation>
    </message>
    <message>
        <source>Extended</source>
        <translation>Verlängert</translation>
    </message>
    <message>
        <source>Changed since marked</source>
        <translation>Seit der Bewertung geändert</translation>
    </message>
    <message>
        <source>What to ask for</source>
        <translation>Was erbeten wird</translation>
    </message>
    <message>
        <source>1 learner</source>
        <translation>1 Person</translation>
    </message>
    <message>
        <source>Nothing of this is wanted from the chosen learners.</source>
        <translation>Von den Gewählten wird nichts davon erbeten.</translation>
    </message>
    <message>
        <source>The reminder as it will be copied</source>
        <translation>Die Erinnerung, wie sie kopiert wird</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Last day for the chosen learners</source>
        <translation>Letzter Tag für die Gewählten</translation>
    </message>
    <message>
        <source>Give them until then</source>
        <translation>Frist bis dahin geben</translation>
    </message>
    <message>
        <source>Take the extension back</source>
        <translation>Verlängerung zurücknehmen</translation>
    </message>
    <message>
        <source>Hand-ins</source>
        <translation>Abgaben</translation>
    </message>
    <message>
        <source>Ask for everything missing</source>
        <translation>Alles Fehlende erbitten</translation>
    </message>
    <message>
        <source>Ask for the readings</source>
        <translation>Messwerte erbitten</translation>
    </message>
    <message>
        <source>Ask for the photo of the set-up</source>
        <translation>Foto des Aufbaus erbitten</translation>
    </message>
    <message>
        <source>Ask for the photo with the set-up</source>
        <translation>Foto mit dem Aufbau erbitten</translation>
    </message>
    <message>
        <source>Ask for the video</source>
        <translation>Video erbitten</translation>
    </message>
    <message>
        <source>Ask again for what could not be used</source>
        <translation>Unbrauchbares erneut erbitten</translation>
    </message>
    <message>
        <source>A list of names</source>
        <translation>Namensliste</translation>
    </message>
    <message>
        <source>Reminder</source>
        <translation>Erinnerung</translation>
    </message>
    <message>
        <source>More time</source>
        <translation>Mehr Zeit</translation>
    </message>
    <message>
        <source>{n} learners</source>
        <translation>{n} Lernende</translation>
    </message>
    <message>
        <source>{n} of {of} learners</source>
        <translation>{n} von {of} Lernenden</translation>
    </message>
    <message>
        <source>Nobody is in the class list.</source>
        <translation>In der Klassenliste steht niemand.</translation>
    </message>
    <message>
        <source>Nobody: the filters leave none of {of} learners</source>
        <translation>Niemand: die Filter lassen keine von {of} Personen übrig</translation>
    </message>
    <message>
        <source>{n} learners chosen</source>
        <translation>{n} Lernende gewählt</translation>
    </message>
    <message>
        <source>1 learner chosen</source>
        <translation>1 Person gewählt</translation>
    </message>
    <message>
        <source>Hold Shift or Ctrl to choose several; Ctrl+A for all that are shown.</source>
        <translation>Mehrere mit Umschalt oder Strg wählen; Strg+A wählt alle gezeigten.</translation>
    </message>
    <message>
        <source>Choose learners in the table: a letter to each stands here then.</source>
        <translation>Wählen Sie in der Tabelle Lernende aus: Dann steht hier an jede Person ein Brief.</translation>
    </message>
    <message>
        <source>Reminders bear names: they wait until names are shown.</source>
        <translation>Erinnerungen tragen Namen: sie warten, bis Namen gezeigt werden.</translation>
    </message>
    <message>
        <source>Nothing is sent; you paste it where you write to them.</source>
        <translation>Nichts wird verschickt; Sie fügen den Text dort ein, wo Sie schreiben.</translation>
    </message>
    <message>
        <source>✓ reminder copied</source>
        <translation>✓ Erinnerung kopiert</translation>
    </message>
</context>
<context>
    <name>Ladder</name>
    <message>
        <source>Learners at each level, now and then</source>
        <translation>Lernende je Stufe, jetzt und dann</translation>
    </message>
</context>
<context>
    <name>LearnerFiles</name>
    <message>
        <source>‹ All that was found</source>
        <translation>‹ Alles Gefundene</translation>
    </message>
    <message>
        <source>No file was found.</source>
        <translation>Keine Datei gefunden.</translation>
    </message>
    <message>
        <source>A later one of the same kind is used; this one is kept.</source>
        <translation>Eine spätere gleicher Art wird verwendet; diese bleibt erhalten.</translation>
    </message>
    <message>
        <source>Somebody else&apos;s</source>
        <translation>Von jemand anderem</translation>
    </message>
    <message>
        <source>Table of readings</source>
        <translation>Messwerttabelle</translation>
    </message>
    <message>
        <source>Photo of the set-up</source>
        <translation>Foto vom Aufbau</translation>
    </message>
    <message>
        <source>Selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>Photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>Video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>Report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Datei</translation>
    </message>
</context>
<context>
    <name>Legend</name>
    <message>
        <source>look before marking</source>
        <translation>vor dem Bewerten ansehen</translation>
    </message>
    <message>
        <source>ask the learner</source>
        <translation>nachfragen</translation>
    </message>
    <message>
        <source>worth knowing</source>
        <translation>zur Kenntnis</translation>
    </message>
    <message>
        <source>struck: missing</source>
        <translation>durchgestrichen: fehlt</translation>
    </message>
    <message>
        <source>to be told apart</source>
        <translation>zu unterscheiden</translation>
    </message>
    <message>
        <source>changed since marked</source>
        <translation>seit der Bewertung geändert</translation>
    </message>
</context>
<context>
    <name>MarkingMargin</name>
    <message>
        <source>Marking</source>
        <translation>Bewertung</translation>
    </message>
    <message>
        <source>Private note on this learner</source>
        <translation>Private Notiz zur Person</translation>
    </message>
    <message>
        <source>Private note on this learner, never sent</source>
        <translation>Private Notiz zur Person, wird nie verschickt</translation>
    </message>
    <message>
        <source>Accept all drafts</source>
        <translation>Alle Entwürfe übernehmen</translation>
    </message>
    <message>
        <source>Next learner</source>
        <translation>Nächste Person</translation>
    </message>
    <message>
        <source>✓ {n:g} of {most:g}</source>
        <translation>✓ {n:g} von {most:g}</translation>
    </message>
    <message>
        <source>✎ draft {n:g} of {most:g}</source>
        <translation>✎ Entwurf {n:g} von {most:g}</translation>
    </message>
    <message>
        <source>{n} of {of} marked</source>
        <translation>{n} von {of} bewertet</translation>
    </message>
    <message>
        <source>{state}, {n} for your eye</source>
        <translation>{state}, {n} selbst ansehen</translation>
    </message>
    <message>
        <source>{state}, look again</source>
        <translation>{state}, bitte noch einmal ansehen</translation>
    </message>
    <message>
        <source>{state}, {n} not saved yet</source>
        <translation>{state}, {n} noch nicht gespeichert</translation>
    </message>
    <message>
        <source>Accept {n} drafts</source>
        <translation>{n} Entwürfe übernehmen</translation>
    </message>
    <message>
        <source>Accept the last draft</source>
        <translation>Letzten Entwurf übernehmen</translation>
    </message>
    <message>
        <source>No draft left</source>
        <translation>Kein Entwurf mehr</translation>
    </message>
</context>
<context>
    <name>ModerationPage</name>
    <message>
        <source>✓ saved {file}</source>
        <translation>✓ gespeichert: {file}</translation>
    </message>
</context>
<context>
    <name>NewClassPage</name>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Weiter</translation>
    </message>
    <message>
        <source>Give up</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>1  What was found</source>
        <translation>1  Was da ist</translation>
    </message>
    <message>
        <source>2  Whose it is</source>
        <translation>2  Wem es gehört</translation>
    </message>
    <message>
        <source>3  What was asked</source>
        <translation>3  Der Auftrag</translation>
    </message>
    <message>
        <source>4  How it is marked</source>
        <translation>4  Die Bewertung</translation>
    </message>
    <message>
        <source>Looking through {name}</source>
        <translation>{name} wird durchgesehen</translation>
    </message>
    <message>
        <source>Nothing in it is changed.</source>
        <translation>Darin wird nichts verändert.</translation>
    </message>
    <message>
        <source>This folder could not be read</source>
        <translation>Dieser Ordner ließ sich nicht lesen</translation>
    </message>
    <message>
        <source>Found in {name}</source>
        <translation>Gefunden in {name}</translation>
    </message>
    <message>
        <source>Whose is it?</source>
        <translation>Wem gehört es?</translation>
    </message>
    <message>
        <source>What was the class asked to do?</source>
        <translation>Was sollte die Klasse tun?</translation>
    </message>
    <message>
        <source>How is it marked?</source>
        <translation>Wie wird bewertet?</translation>
    </message>
    <message>
        <source>This folder has been marked in before; its marks are kept.</source>
        <translation>In diesem Ordner wurde schon bewertet; die Bewertungen bleiben erhalten.</translation>
    </message>
    <message>
        <source>Nothing was changed. Here is what the folder holds.</source>
        <translation>Nichts wurde verändert. Das enthält der Ordner.</translation>
    </message>
    <message>
        <source>Files still open: {n}. What you leave open can be settled later, in the class.</source>
        <translation>Noch offene Dateien: {n}. Was Sie offen lassen, lässt sich später in der Klasse klären.</translation>
    </message>
    <message>
        <source>Nothing is left to settle; set aside as nobody&apos;s: {n}.</source>
        <translation>Nichts ist mehr zu klären; als niemandes beiseitegelegt: {n}.</translation>
    </message>
    <message>
        <source>Every file has its owner.</source>
        <translation>Jede Datei ist zugeordnet.</translation>
    </message>
    <message>
        <source>Each setting may stay as it is. To the right stands what it means for this class.</source>
        <translation>Jede Angabe darf bleiben, wie sie ist. Rechts steht, was sie für diese Klasse bedeutet.</translation>
    </message>
    <message>
        <source>The rubric drafts; you mark. It can be changed later.</source>
        <translation>Das Raster entwirft, Sie bewerten. Es lässt sich später ändern.</translation>
    </message>
    <message>
        <source>Begin marking</source>
        <translation>Bewertung beginnen</translation>
    </message>
    <message>
        <source>First say what is to become of brief.toml.</source>
        <translation>Sagen Sie zuerst, was aus brief.toml werden soll.</translation>
    </message>
    <message>
        <source>Give up this new class?</source>
        <translation>Diese neue Klasse abbrechen?</translation>
    </message>
    <message>
        <source>What you settled and filled in is not kept. The folder is as it was.</source>
        <translation>Was Sie geklärt und ausgefüllt haben, bleibt nicht erhalten. Der Ordner ist, wie er war.</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Weitermachen</translation>
    </message>
</context>
<context>
    <name>NoWorkNotice</name>
    <message>
        <source>Choose another folder…</source>
        <translation>Anderen Ordner wählen…</translation>
    </message>
    <message>
        <source>Look again</source>
        <translation>Noch einmal nachsehen</translation>
    </message>
    <message>
        <source>A class folder holds what the class handed in:</source>
        <translation>Ein Klassenordner enthält, was die Klasse abgegeben hat:</translation>
    </message>
    <message>
        <source>–  a folder or a zip file for each learner, with the name on it,</source>
        <translation>–  einen Ordner oder eine Zip-Datei für jede Person, mit ihrem Namen,</translation>
    </message>
    <message>
        <source>–  or files with the learners&apos; names,</source>
        <translation>–  oder Dateien mit den Namen der Lernenden,</translation>
    </message>
    <message>
        <source>–  or one sheet with a row for each learner.</source>
        <translation>–  oder ein Blatt mit einer Zeile für jede Person.</translation>
    </message>
    <message>
        <source>A class list (id, name) may lie beside them.</source>
        <translation>Eine Klassenliste (Kennung, Name) kann daneben liegen.</translation>
    </message>
    <message>
        <source>No work was found here.</source>
        <translation>Hier wurde keine Arbeit gefunden.</translation>
    </message>
    <message>
        <source>Files were found, but no learner.</source>
        <translation>Dateien wurden gefunden, aber niemand, zu dem sie gehören.</translation>
    </message>
    <message>
        <source>No table, photo, video or report was found that is of use.</source>
        <translation>Keine brauchbare Tabelle, kein Foto, Video oder Bericht wurde gefunden.</translation>
    </message>
</context>
<context>
    <name>Number</name>
    <message>
        <source>.</source>
        <translation>,</translation>
    </message>
</context>
<context>
    <name>OpenPaper</name>
    <message>
        <source>Open between the markers</source>
        <translation>Offen zwischen den Korrekturen</translation>
    </message>
    <message>
        <source>Nothing is open.</source>
        <translation>Nichts ist offen.</translation>
    </message>
    <message>
        <source>No second marks were merged yet.</source>
        <translation>Noch wurde keine Zweitkorrektur übernommen.</translation>
    </message>
    <message>
        <source>Show {n} more</source>
        <translation>{n} weitere zeigen</translation>
    </message>
    <message>
        <source>Merged: {n} entries added, {known} known already, {d} double marks, {c} clashes</source>
        <translation>Übernommen: {n} Einträge neu, {known} schon bekannt, {d} doppelte Bewertungen, {c} Widersprüche</translation>
    </message>
    <message>
        <source>{n} changed again by the same person: the later holds</source>
        <translation>{n} von derselben Person noch einmal geändert: Das Spätere gilt</translation>
    </message>
</context>
<context>
    <name>OpenRow</name>
    <message>
        <source>Level that holds: {c}</source>
        <translation>Gültige Stufe: {c}</translation>
    </message>
    <message>
        <source>Your reason</source>
        <translation>Ihr Grund</translation>
    </message>
    <message>
        <source>Your reason: {c}</source>
        <translation>Ihr Grund: {c}</translation>
    </message>
    <message>
        <source>Settle</source>
        <translation>Klären</translation>
    </message>
    <message>
        <source>Settle: {c}</source>
        <translation>Klären: {c}</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>Look at the work: {c}</source>
        <translation>Arbeit ansehen: {c}</translation>
    </message>
</context>
<context>
    <name>OutPaper</name>
    <message>
        <source>What goes out</source>
        <translation>Was hinausgeht</translation>
    </message>
    <message>
        <source>Feedback sheets (PDF and web page, and all in a zip)</source>
        <translation>Rückmeldebögen (PDF und Webseite, alle auch in einer Zip-Datei)</translation>
    </message>
    <message>
        <source>OneRoster results for the school&apos;s system</source>
        <translation>OneRoster-Ergebnisse für das Schulsystem</translation>
    </message>
    <message>
        <source>Id of the school in that system</source>
        <translation>Kennung der Schule in diesem System</translation>
    </message>
    <message>
        <source>Id of the term in that system</source>
        <translation>Kennung des Halbjahrs in diesem System</translation>
    </message>
    <message>
        <source>Moderation record, to be signed</source>
        <translation>Protokoll der Zweitkorrektur, zum Unterschreiben</translation>
    </message>
    <message>
        <source>List of every decision</source>
        <translation>Liste aller Entscheidungen</translation>
    </message>
    <message>
        <source>Write what goes out</source>
        <translation>Ausgehendes schreiben</translation>
    </message>
    <message>
        <source>Nothing can go out: results are not what was signed.</source>
        <extracomment>Why nothing can be written yet, beside the deed.</extracomment>
        <translation>Es kann nichts hinausgehen: Ergebnisse weichen vom Unterschriebenen ab.</translation>
    </message>
    <message>
        <source>The workbook and the mark sheet are always written. The marks are not signed off yet; what goes out says so.</source>
        <translation>Die Arbeitsmappe und die Punkteliste werden immer geschrieben. Die Bewertung ist noch nicht unterschrieben; das Ausgehende sagt es.</translation>
    </message>
    <message>
        <source>The workbook and the mark sheet are always written.</source>
        <translation>Die Arbeitsmappe und die Punkteliste werden immer geschrieben.</translation>
    </message>
    <message>
        <source>The school&apos;s system needs both ids. Fill them in, or leave its results out.</source>
        <translation>Das Schulsystem braucht beide Kennungen. Bitte ausfüllen oder seine Ergebnisse weglassen.</translation>
    </message>
    <message>
        <source>Writing what goes out…</source>
        <translation>Ausgehendes wird geschrieben…</translation>
    </message>
    <message>
        <source>✓ written to {folder}</source>
        <translation>✓ geschrieben nach {folder}</translation>
    </message>
    <message>
        <source>{what}; their rows say so.</source>
        <translation>{what}; ihre Zeilen sagen es.</translation>
    </message>
    <message>
        <source>{n} feedback sheets written.</source>
        <translation>{n} Rückmeldebögen geschrieben.</translation>
    </message>
    <message>
        <source>1 feedback sheet written.</source>
        <translation>1 Rückmeldebogen geschrieben.</translation>
    </message>
    <message>
        <source>Texts written for a level that moderation changed: {n}.</source>
        <translation>Texte, die für eine von der Moderation geänderte Stufe geschrieben sind: {n}.</translation>
    </message>
    <message>
        <source>Since the writing of {day}: {n} changes.</source>
        <translation>Seit dem Schreiben vom {day}: {n} Änderungen.</translation>
    </message>
    <message>
        <source>Nothing has changed since the writing of {day}.</source>
        <translation>Seit dem Schreiben vom {day} hat sich nichts geändert.</translation>
    </message>
    <message>
        <source>Since the writing of {day}: 1 change.</source>
        <translation>Seit dem Schreiben vom {day}: 1 Änderung.</translation>
    </message>
</context>
<context>
    <name>OverviewPage</name>
    <message>
        <source>In order of marking</source>
        <translation>In der Reihenfolge der Bewertung</translation>
    </message>
    <message>
        <source>Learners behind it; Enter opens</source>
        <translation>Lernende dahinter; Enter öffnet</translation>
    </message>
    <message>
        <source>Choose a bar or a point to see the learners behind it.</source>
        <translation>Wählen Sie einen Balken oder Punkt, um die Lernenden dahinter zu sehen.</translation>
    </message>
    <message>
        <source>✓ saved {file}</source>
        <translation>✓ gespeichert: {file}</translation>
    </message>
</context>
<context>
    <name>OwnTable</name>
    <message>
        <source>The learner&apos;s own table</source>
        <translation>Eigene Tabelle der Person</translation>
    </message>
    <message>
        <source>Sheet</source>
        <translation>Blatt</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Timing</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Swings</source>
        <translation>Schwingungen</translation>
    </message>
    <message>
        <source>Neither</source>
        <translation>Nichts davon</translation>
    </message>
    <message>
        <source>It runs in rows</source>
        <translation>Sie läuft in Zeilen</translation>
    </message>
    <message>
        <source>Unit of length</source>
        <translation>Längeneinheit</translation>
    </message>
    <message>
        <source>Unit of time</source>
        <translation>Zeiteinheit</translation>
    </message>
    <message>
        <source>Read it so</source>
        <translation>So lesen</translation>
    </message>
    <message>
        <source>As the program read it</source>
        <translation>Wie vom Programm gelesen</translation>
    </message>
    <message>
        <source>Close (Esc)</source>
        <translation>Schließen (Esc)</translation>
    </message>
    <message>
        <source>The chosen column holds:</source>
        <translation>Die gewählte Spalte enthält:</translation>
    </message>
    <message>
        <source>No table was handed in.</source>
        <translation>Es wurde keine Tabelle abgegeben.</translation>
    </message>
    <message>
        <source>{name}: as headed</source>
        <translation>{name}: laut Überschrift</translation>
    </message>
    <message>
        <source>Text</source>
        <translation>Text</translation>
    </message>
    <message>
        <source>Choose a column, then say what it holds: lengths and timings are needed.</source>
        <translation>Wählen Sie eine Spalte und sagen Sie, was darin steht: Längen und Zeiten werden gebraucht.</translation>
    </message>
    <message>
        <source>Choose a row, then say what it holds: lengths and timings are needed.</source>
        <translation>Wählen Sie eine Zeile und sagen Sie, was darin steht: Längen und Zeiten werden gebraucht.</translation>
    </message>
    <message>
        <source>So the program reads it now. Change what a column holds, or a unit.</source>
        <translation>So liest das Programm sie jetzt. Ändern Sie, was eine Spalte enthält, oder eine Einheit.</translation>
    </message>
</context>
<context>
    <name>PackDoor</name>
    <message>
        <source>Open a moderation pack…</source>
        <translation>Zweitkorrektur-Paket öffnen…</translation>
    </message>
    <message>
        <source>Leave the pack</source>
        <translation>Paket verlassen</translation>
    </message>
    <message>
        <source>Next learner of the pack</source>
        <translation>Nächste Person im Paket</translation>
    </message>
    <message>
        <source>Learner before in the pack</source>
        <translation>Vorige Person im Paket</translation>
    </message>
    <message>
        <source>Next criterion</source>
        <translation>Nächstes Kriterium</translation>
    </message>
    <message>
        <source>Criterion before</source>
        <translation>Voriges Kriterium</translation>
    </message>
    <message>
        <source>Show the first marks</source>
        <translation>Erstkorrektur zeigen</translation>
    </message>
    <message>
        <source>Send back what was second-marked…</source>
        <translation>Zweitkorrektur zurückschicken…</translation>
    </message>
    <message>
        <source>Level {n} as your mark</source>
        <translation>Stufe {n} als Ihre Bewertung</translation>
    </message>
    <message>
        <source>Open a moderation pack</source>
        <translation>Zweitkorrektur-Paket öffnen</translation>
    </message>
    <message>
        <source>Your name, as it shall stand under your second marks</source>
        <translation>Ihr Name, wie er unter Ihrer Zweitkorrektur stehen soll</translation>
    </message>
    <message>
        <source>Second marking</source>
        <translation>Zweitkorrektur</translation>
    </message>
</context>
<context>
    <name>PackSheet</name>
    <message>
        <source>Explanations of the numbers come with the first marks: they would lead you.</source>
        <translation>Erklärungen der Zahlen kommen mit der Erstkorrektur: sie würden Sie lenken.</translation>
    </message>
    <message>
        <source>Learner of the pack</source>
        <translation>Person im Paket</translation>
    </message>
    <message>
        <source>Send back…</source>
        <translation>Zurückschicken…</translation>
    </message>
    <message>
        <source>Leave the pack</source>
        <translation>Paket verlassen</translation>
    </message>
    <message>
        <source>Learner before</source>
        <translation>Vorige Person</translation>
    </message>
    <message>
        <source>Next learner</source>
        <translation>Nächste Person</translation>
    </message>
    <message>
        <source>check code {code}</source>
        <translation>Prüfcode {code}</translation>
    </message>
    <message>
        <source>The same digits as the sender&apos;s: compare them by telephone</source>
        <translation>Dieselben Ziffern wie beim Absender: vergleichen Sie sie am Telefon</translation>
    </message>
    <message>
        <source>as {who}</source>
        <translation>als {who}</translation>
    </message>
    <message>
        <source>Written report…</source>
        <translation>Bericht…</translation>
    </message>
    <message>
        <source>You are second-marking</source>
        <translation>Sie korrigieren zum zweiten Mal</translation>
    </message>
    <message>
        <source>Written report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>Words of the report, names taken out</source>
        <translation>Text des Berichts, ohne Namen</translation>
    </message>
    <message>
        <source>✓ looked</source>
        <translation>✓ angesehen</translation>
    </message>
    <message>
        <source>{n} of {of} learners second-marked</source>
        <translation>{n} von {of} Lernenden zweitkorrigiert</translation>
    </message>
    <message>
        <source>Send back</source>
        <translation>Zurückschicken</translation>
    </message>
    <message>
        <source>✓ written: {file}. Send this file to the first marker.</source>
        <translation>✓ geschrieben: {file}. Schicken Sie diese Datei an die Erstkorrektur.</translation>
    </message>
</context>
<context>
    <name>Peep</name>
    <message>
        <source>Look inside</source>
        <translation>Hineinsehen</translation>
    </message>
    <message>
        <source>It cannot be shown here.</source>
        <translation>Hier lässt sie sich nicht zeigen.</translation>
    </message>
    <message>
        <source>It is empty.</source>
        <translation>Sie ist leer.</translation>
    </message>
</context>
<context>
    <name>Pending</name>
    <message>
        <source>● Brief not saved</source>
        <translation>● Auftrag ungespeichert</translation>
    </message>
    <message>
        <source>● Rubric not saved</source>
        <translation>● Raster ungespeichert</translation>
    </message>
    <message>
        <source>What you typed is kept while the class is open. Go back to it.</source>
        <translation>Was Sie eingegeben haben, bleibt, solange die Klasse offen ist. Zurück dorthin.</translation>
    </message>
</context>
<context>
    <name>PhotoView</name>
    <message>
        <source>Picture</source>
        <translation>Bild</translation>
    </message>
</context>
<context>
    <name>PhraseBox</name>
    <message>
        <source>Find one of your phrases, or write one; { quotes the learner’s numbers</source>
        <translation>Textbaustein suchen oder schreiben; { setzt Zahlen der Person ein</translation>
    </message>
    <message>
        <source>Find or write a phrase</source>
        <translation>Textbaustein suchen oder schreiben</translation>
    </message>
    <message>
        <source>Your phrases</source>
        <translation>Ihre Textbausteine</translation>
    </message>
    <message>
        <source>Put it in</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>Keep as a phrase</source>
        <translation>Als Baustein merken</translation>
    </message>
    <message>
        <source>Forget</source>
        <translation>Vergessen</translation>
    </message>
    <message>
        <source>Forget the chosen phrase</source>
        <translation>Gewählten Baustein vergessen</translation>
    </message>
    <message>
        <source>None of your phrases fits what you typed.</source>
        <translation>Keiner Ihrer Bausteine passt zu dem Getippten.</translation>
    </message>
    <message>
        <source>You have no phrase for this criterion yet. Write one above: “Put it in” says it to this learner, “Keep as a phrase” has it ready for others.</source>
        <translation>Für dieses Kriterium haben Sie noch keinen Baustein. Schreiben Sie oben einen: „Einfügen“ sagt ihn dieser Person, „Als Baustein merken“ hält ihn für andere bereit.</translation>
    </message>
    <message>
        <source>Written where the same was found: {found}</source>
        <translation>Geschrieben bei gleichem Befund: {found}</translation>
    </message>
    <message>
        <source>Written by you</source>
        <translation>Von Ihnen geschrieben</translation>
    </message>
    <message>
        <source>Words: {n}; characters: {c} of {most}</source>
        <translation>Wörter: {n}; Zeichen: {c} von {most}</translation>
    </message>
    <message>
        <source>; reads easily from about {age:.0f} years</source>
        <translation>; leicht lesbar ab etwa {age:.0f} Jahren</translation>
    </message>
</context>
<context>
    <name>PhraseDrawer</name>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Close your phrases</source>
        <translation>Textbausteine schließen</translation>
    </message>
    <message>
        <source>For “{title}”</source>
        <translation>Für „{title}“</translation>
    </message>
</context>
<context>
    <name>PieceGutter</name>
    <message>
        <source>Drag to move this sentence (Alt+↑, Alt+↓)</source>
        <translation>Ziehen verschiebt diesen Satz (Alt+↑, Alt+↓)</translation>
    </message>
</context>
<context>
    <name>PieceStatus</name>
    <message>
        <source>Accepted</source>
        <translation>Angenommen</translation>
    </message>
    <message>
        <source>Unreadable</source>
        <translation>Unlesbar</translation>
    </message>
    <message>
        <source>Hand in again</source>
        <translation>Neu abgeben</translation>
    </message>
</context>
<context>
    <name>PlaceBar</name>
    <message>
        <source>Class</source>
        <translation>Klasse</translation>
    </message>
    <message>
        <source>Criterion</source>
        <translation>Kriterium</translation>
    </message>
    <message>
        <source>Pictures</source>
        <translation>Bilder</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>Hand-ins</source>
        <translation>Abgaben</translation>
    </message>
    <message>
        <source>Moderation</source>
        <translation>Zweitkorrektur</translation>
    </message>
    <message>
        <source>Names shown</source>
        <translation>Namen sichtbar</translation>
    </message>
    <message>
        <source>Hide names, selfies and file names in the whole window. A set-up photo or a video may still show who it is. Settling whose files are whose waits until names are shown.</source>
        <translation>Namen, Selfies und Dateinamen im ganzen Fenster verbergen. Ein Foto vom Aufbau oder ein Video kann trotzdem zeigen, wer es ist. Die Zuordnung der Dateien wartet, bis Namen wieder gezeigt werden.</translation>
    </message>
    <message>
        <source>✓ Names hidden</source>
        <translation>✓ Namen verborgen</translation>
    </message>
</context>
<context>
    <name>PortfolioPage</name>
    <message>
        <source>Whole table</source>
        <translation>Ganze Tabelle</translation>
    </message>
    <message>
        <source>The class</source>
        <translation>Klasse</translation>
    </message>
    <message>
        <source>Learner before</source>
        <translation>Vorige Person</translation>
    </message>
    <message>
        <source>Next learner</source>
        <translation>Nächste Person</translation>
    </message>
    <message>
        <source>handed in {t}</source>
        <translation>abgegeben {t}</translation>
    </message>
    <message>
        <source>nothing handed in</source>
        <translation>nichts abgegeben</translation>
    </message>
    <message>
        <source>✓ saved {file}</source>
        <translation>✓ gespeichert: {file}</translation>
    </message>
    <message>
        <source>No readings were found.</source>
        <translation>Keine Messwerte gefunden.</translation>
    </message>
    <message>
        <source>  ·  written “{raw}”</source>
        <translation>  ·  geschrieben „{raw}“</translation>
    </message>
    <message>
        <source>Choose a timing in the table first: it is then left out.</source>
        <translation>Wählen Sie zuerst eine Zeit in der Tabelle: Sie wird dann weggelassen.</translation>
    </message>
    <message>
        <source>No explanation here moves the readings: nothing to show.</source>
        <translation>Keine Erklärung hier verschiebt die Messwerte: nichts zu zeigen.</translation>
    </message>
    <message>
        <source>There is no explanation here to agree with.</source>
        <translation>Hier gibt es keine Erklärung, der zuzustimmen wäre.</translation>
    </message>
    <message>
        <source>“{criterion}” has {n} levels: there is no level {wanted}.</source>
        <translation>„{criterion}“ hat {n} Stufen: Eine Stufe {wanted} gibt es nicht.</translation>
    </message>
</context>
<context>
    <name>PreviewPanel</name>
    <message>
        <source>Not right yet: this is how it was before.</source>
        <translation>Noch nicht richtig: So war es vorher.</translation>
    </message>
    <message>
        <source>Learner whose sentences are shown</source>
        <translation>Person, deren Sätze gezeigt werden</translation>
    </message>
    <message>
        <source>Outlined: drafted now. Filled: with this rubric.</source>
        <translation>Umrandet: jetziger Entwurf. Gefüllt: mit diesem Raster.</translation>
    </message>
    <message>
        <source>What a learner would read</source>
        <translation>Was die Person lesen würde</translation>
    </message>
    <message>
        <source>What this class would get</source>
        <translation>Was diese Klasse bekäme</translation>
    </message>
    <message>
        <source>Shown again once the rubric is right.</source>
        <translation>Erscheint wieder, sobald das Raster stimmt.</translation>
    </message>
    <message>
        <source>Mean of the drafts: {a:.1f} of {am:g} now, {b:.1f} of {bm:g} then.</source>
        <translation>Mittel der Entwürfe: jetzt {a:.1f} von {am:g}, dann {b:.1f} von {bm:g}.</translation>
    </message>
    <message>
        <source>no level drafted</source>
        <translation>keine Stufe entworfen</translation>
    </message>
    <message>
        <source>Nobody&apos;s level changes.</source>
        <translation>Bei niemandem ändert sich die Stufe.</translation>
    </message>
    <message>
        <source>Fewer names</source>
        <translation>Weniger Namen</translation>
    </message>
    <message>
        <source>All names</source>
        <translation>Alle Namen</translation>
    </message>
    <message>
        <source>{names} and {n} more</source>
        <translation>{names} und {n} weitere</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>Nothing is said to this learner here.</source>
        <translation>Hier wird dieser Person nichts gesagt.</translation>
    </message>
</context>
<context>
    <name>PseudonymPage</name>
    <message>
        <source>Mark under numbers</source>
        <translation>Unter Nummern bewerten</translation>
    </message>
    <message>
        <source>A copy of the class in which everybody is a number, to be marked on a machine that never sees the names. The key lies in a file of its own: keep it elsewhere, and do not lose it. At the end the marks are brought home into this class, with the signatures they were made with.</source>
        <translation>Eine Kopie der Klasse, in der alle nur Nummern sind, zum Bewerten auf einem Rechner, der die Namen nie sieht. Der Schlüssel liegt in einer eigenen Datei: bewahren Sie ihn anderswo auf und verlieren Sie ihn nicht. Am Ende kommen die Bewertungen in diese Klasse zurück, mit den Unterschriften, mit denen sie gemacht wurden.</translation>
    </message>
    <message>
        <source>Taken out: names and ids in folder and file names and in tables; the tags of photos and videos, and the videos&apos; sound. Reports and files that nobody owns stay behind. Marks made so far stay here.</source>
        <translation>Entfernt werden: Namen und Kennungen in Ordner- und Dateinamen und in Tabellen; die Metadaten von Fotos und Videos und der Ton der Videos. Berichte und Dateien, die niemandem gehören, bleiben zurück. Bisherige Bewertungen bleiben hier.</translation>
    </message>
    <message>
        <source>Not taken out, and not to be: faces, hands and rooms; handwriting, and names written on what is pictured; a learner&apos;s way of writing.</source>
        <translation>Nicht entfernt werden und nicht entfernbar sind: Gesichter, Hände und Räume; Handschrift und Namen auf Abgebildetem; die Art, wie jemand schreibt.</translation>
    </message>
    <message>
        <source>Make the copy…</source>
        <translation>Kopie anlegen…</translation>
    </message>
    <message>
        <source>Bring the marks of a copy home…</source>
        <translation>Bewertungen einer Kopie zurückholen…</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>An empty folder for the copy</source>
        <translation>Ein leerer Ordner für die Kopie</translation>
    </message>
    <message>
        <source>Where the key shall be kept</source>
        <translation>Wo der Schlüssel liegen soll</translation>
    </message>
    <message>
        <source>Copying…</source>
        <translation>Wird kopiert…</translation>
    </message>
    <message>
        <source>The copy that was marked</source>
        <translation>Die bewertete Kopie</translation>
    </message>
    <message>
        <source>Its key</source>
        <translation>Ihr Schlüssel</translation>
    </message>
    <message>
        <source>Bringing home…</source>
        <translation>Wird zurückgeholt…</translation>
    </message>
    <message>
        <source>✓ {n} decisions brought home.</source>
        <translation>✓ {n} Entscheidungen zurückgeholt.</translation>
    </message>
    <message>
        <source>✓ {n} learners, {files} files copied to {folder}.</source>
        <translation>✓ {n} Lernende, {files} Dateien kopiert nach {folder}.</translation>
    </message>
    <message>
        <source>Left out: {files}.</source>
        <translation>Weggelassen: {files}.</translation>
    </message>
    <message>
        <source>Perhaps names, and left: {words}.</source>
        <translation>Vielleicht Namen, stehen geblieben: {words}.</translation>
    </message>
</context>
<context>
    <name>PurgePage</name>
    <message>
        <source>Remove photos and videos</source>
        <translation>Fotos und Videos entfernen</translation>
    </message>
    <message>
        <source>Once the marks are signed off, the learners&apos; photos and videos can be removed from the class folder, from zip files in it and from what Markbench keeps to be quick. Marks, readings, what was measured in photos and videos, feedback and the journal stay, and the class still opens and is exported as before.</source>
        <translation>Ist die Bewertung unterschrieben, lassen sich die Fotos und Videos der Lernenden aus dem Klassenordner, aus den Zip-Dateien darin und aus dem Zwischenspeicher von Markbench entfernen. Bewertungen, Messwerte, was in Fotos und Videos gemessen wurde, Rückmeldungen und das Journal bleiben, und die Klasse lässt sich öffnen und ausgeben wie zuvor.</translation>
    </message>
    <message>
        <source>Also tables, reports and all else handed in</source>
        <translation>Auch Tabellen, Berichte und alles andere Abgegebene</translation>
    </message>
    <message>
        <source>What becomes of it</source>
        <translation>Was damit geschieht</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Files</source>
        <translation>Dateien</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>What goes and what stays</source>
        <translation>Was geht und was bleibt</translation>
    </message>
    <message>
        <source>This cannot be undone: nothing here brings them back, and nobody can look at them again after an appeal. Copies elsewhere, such as the school&apos;s backups, a share, phones or mailboxes, are not reached.</source>
        <translation>Das lässt sich nicht rückgängig machen: Nichts hier bringt sie zurück, und nach einem Einspruch kann niemand sie noch einmal ansehen. Kopien anderswo, etwa in Sicherungen der Schule, auf Freigaben, Telefonen oder in Postfächern, werden nicht erreicht.</translation>
    </message>
    <message>
        <source>I have seen what goes, and want it removed for good</source>
        <translation>Ich habe gesehen, was geht, und will es endgültig entfernen</translation>
    </message>
    <message>
        <source>Leave them</source>
        <translation>Dalassen</translation>
    </message>
    <message>
        <source>Removing…</source>
        <translation>Wird entfernt…</translation>
    </message>
    <message>
        <source>✓ {n} files removed, {size}. The journal names each with its digest.</source>
        <translation>✓ {n} Dateien entfernt, {size}. Das Journal nennt jede mit ihrer Prüfsumme.</translation>
    </message>
    <message>
        <source>✓ 1 file removed, {size}. The journal names it with its digest.</source>
        <translation>✓ 1 Datei entfernt, {size}. Das Journal nennt sie mit ihrer Prüfsumme.</translation>
    </message>
    <message>
        <source>Still there: {files}</source>
        <translation>Noch da: {files}</translation>
    </message>
    <message>
        <source>goes</source>
        <translation>geht</translation>
    </message>
    <message>
        <source>stays</source>
        <translation>bleibt</translation>
    </message>
    <message>
        <source>Remove {n} files, {size}, for good</source>
        <translation>{n} Dateien, {size}, endgültig entfernen</translation>
    </message>
    <message>
        <source>Remove 1 file, {size}, for good</source>
        <translation>1 Datei, {size}, endgültig entfernen</translation>
    </message>
    <message>
        <source>photos of the set-up</source>
        <translation>Fotos vom Aufbau</translation>
    </message>
    <message>
        <source>photos of the learner</source>
        <translation>Fotos der Lernenden</translation>
    </message>
    <message>
        <source>photos not told apart</source>
        <translation>nicht zugeordnete Fotos</translation>
    </message>
    <message>
        <source>swing videos</source>
        <translation>Schwingungsvideos</translation>
    </message>
    <message>
        <source>tables of readings</source>
        <translation>Messwerttabellen</translation>
    </message>
    <message>
        <source>written reports</source>
        <translation>Berichte</translation>
    </message>
    <message>
        <source>moderation packs, which hold copies of photos</source>
        <translation>Zweitkorrektur-Pakete, die Kopien von Fotos enthalten</translation>
    </message>
    <message>
        <source>other files</source>
        <translation>andere Dateien</translation>
    </message>
</context>
<context>
    <name>ReadingsModel</name>
    <message>
        <source>T, T² and g are worked out: correct the length or a time instead.</source>
        <translation>T, T² und g sind berechnet: Bitte die Länge oder eine Zeit berichtigen.</translation>
    </message>
    <message>
        <source>This is no cell of the learner’s table. “Whole table” takes what you type instead.</source>
        <translation>Diese Zelle steht nicht in der Tabelle der Abgabe. Unter „Ganze Tabelle“ lässt sich eintragen, was gelten soll.</translation>
    </message>
    <message>
        <source>“{text}” cannot be read.</source>
        <translation>„{text}“ ist nicht lesbar.</translation>
    </message>
    <message>
        <source>Nothing was written here; filled in with “{text}”.</source>
        <translation>Hier stand nichts; eingetragen wurde „{text}“.</translation>
    </message>
    <message>
        <source>“{text}” cannot be read; “{raw}” still counts.</source>
        <translation>„{text}“ ist nicht lesbar; „{raw}“ gilt weiter.</translation>
    </message>
    <message>
        <source>Written “{raw}”; corrected to “{text}”.</source>
        <translation>Geschrieben „{raw}“; berichtigt zu „{text}“.</translation>
    </message>
</context>
<context>
    <name>ReadingsView</name>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
</context>
<context>
    <name>RestorePage</name>
    <message>
        <source>Copies of this class</source>
        <translation>Kopien dieser Klasse</translation>
    </message>
    <message>
        <source>Markbench copies the class&apos;s file by itself, at most once an hour, and keeps the ten fullest. Going back decides again what differs; nothing decided since is thrown away, and the present is copied first. The learners&apos; files are not touched.</source>
        <translation>Markbench kopiert die Datei der Klasse von selbst, höchstens einmal in der Stunde, und behält die zehn vollsten. Zurückkehren entscheidet neu, was abweicht; nichts seither Entschiedenes geht verloren, und der jetzige Stand wird zuerst kopiert. Die Dateien der Lernenden bleiben unberührt.</translation>
    </message>
    <message>
        <source>Made</source>
        <translation>Erstellt</translation>
    </message>
    <message>
        <source>Decisions</source>
        <translation>Entscheidungen</translation>
    </message>
    <message>
        <source>Marks</source>
        <translation>Bewertungen</translation>
    </message>
    <message>
        <source>Kept as</source>
        <translation>Abgelegt als</translation>
    </message>
    <message>
        <source>Copies, newest first</source>
        <translation>Kopien, neueste zuerst</translation>
    </message>
    <message>
        <source>Go back to this copy</source>
        <translation>Zu dieser Kopie zurückkehren</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Alles so lassen</translation>
    </message>
    <message>
        <source>✓ The class stands as it did {when}. The copy made just now holds what was there before.</source>
        <translation>✓ Die Klasse steht wie am {when}. Die eben gemachte Kopie enthält den Stand davor.</translation>
    </message>
    <message>
        <source>There is no copy yet. The first is made when the class is next opened after something was decided.</source>
        <translation>Es gibt noch keine Kopie. Die erste entsteht, wenn die Klasse nach einer Entscheidung das nächste Mal geöffnet wird.</translation>
    </message>
    <message>
        <source>The class stands as it stood in this copy: there is nothing to go back to.</source>
        <translation>Die Klasse steht wie in dieser Kopie: es gibt nichts, wozu man zurückkehren könnte.</translation>
    </message>
    <message>
        <source>1 mark made since becomes a draft again</source>
        <translation>1 seither vergebene Bewertung wird wieder Entwurf</translation>
    </message>
    <message>
        <source>{n} marks made since become drafts again</source>
        <translation>{n} seither vergebene Bewertungen werden wieder Entwürfe</translation>
    </message>
    <message>
        <source>1 mark taken away since comes back</source>
        <translation>1 seither zurückgenommene Bewertung kommt wieder</translation>
    </message>
    <message>
        <source>{n} marks taken away since come back</source>
        <translation>{n} seither zurückgenommene Bewertungen kommen wieder</translation>
    </message>
    <message>
        <source>1 mark takes its earlier level</source>
        <translation>1 Bewertung erhält ihre frühere Stufe</translation>
    </message>
    <message>
        <source>{n} marks take their earlier level</source>
        <translation>{n} Bewertungen erhalten ihre frühere Stufe</translation>
    </message>
    <message>
        <source>{n} texts read as they did</source>
        <translation>{n} Texte lauten wie zuvor</translation>
    </message>
    <message>
        <source>1 text reads as it did</source>
        <translation>1 Text lautet wie zuvor</translation>
    </message>
    <message>
        <source>1 other choice is as it was</source>
        <translation>1 andere Festlegung ist wie zuvor</translation>
    </message>
    <message>
        <source>{n} other choices are as they were</source>
        <translation>{n} andere Festlegungen sind wie zuvor</translation>
    </message>
    <message>
        <source>{n} decisions were made since; they stay in the journal.</source>
        <translation>{n} Entscheidungen kamen seither hinzu; sie bleiben im Journal.</translation>
    </message>
    <message>
        <source>1 decision was made since; it stays in the journal.</source>
        <translation>1 Entscheidung kam seither hinzu; sie bleibt im Journal.</translation>
    </message>
</context>
<context>
    <name>Roll</name>
    <message>
        <source>What each learner handed in</source>
        <translation>Was jede Person abgegeben hat</translation>
    </message>
    <message>
        <source>{n} of {of} learners have all four pieces</source>
        <translation>{n} von {of} Lernenden haben alle vier Stücke</translation>
    </message>
    <message>
        <source>table</source>
        <translation>Tabelle</translation>
    </message>
    <message>
        <source>set-up</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>file</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>not there: {pieces}</source>
        <translation>nicht vorhanden: {pieces}</translation>
    </message>
    <message>
        <source>to be told apart among the photos: {pieces}</source>
        <translation>unter den Fotos noch zu unterscheiden: {pieces}</translation>
    </message>
    <message>
        <source>{name}: all four pieces</source>
        <translation>{name}: alle vier Stücke</translation>
    </message>
</context>
<context>
    <name>RubricChooser</name>
    <message>
        <source>{name}
cannot be used</source>
        <translation>{name}
ist nicht verwendbar</translation>
    </message>
    <message>
        <source>in the class folder</source>
        <translation>im Klassenordner</translation>
    </message>
    <message>
        <source>comes along</source>
        <translation>mitgeliefert</translation>
    </message>
    <message>
        <source>{title}
{marks:g} marks, {n} criteria; {origin}</source>
        <translation>{title}
{marks:g} Punkte, {n} Kriterien; {origin}</translation>
    </message>
    <message>
        <source>There is no rubric that can be used.</source>
        <translation>Es gibt kein verwendbares Raster.</translation>
    </message>
    <message>
        <source>for your eye</source>
        <translation>selbst ansehen</translation>
    </message>
    <message>
        <source>{n:g} marks</source>
        <translation>{n:g} Punkte</translation>
    </message>
    <message>
        <source>{n:g}  {name}: {descriptor}</source>
        <translation>{n:g}  {name}: {descriptor}</translation>
    </message>
</context>
<context>
    <name>RubricPage</name>
    <message>
        <source>Title of the rubric</source>
        <translation>Titel des Rasters</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Criteria</source>
        <translation>Kriterien</translation>
    </message>
    <message>
        <source>Name to save the rubric under</source>
        <translation>Name, unter dem das Raster gespeichert wird</translation>
    </message>
    <message>
        <source>use it for this class</source>
        <translation>für diese Klasse verwenden</translation>
    </message>
    <message>
        <source>What this class would get</source>
        <translation>Was diese Klasse bekäme</translation>
    </message>
    <message>
        <source>Add a criterion</source>
        <translation>Kriterium hinzufügen</translation>
    </message>
    <message>
        <source>Move the criterion up</source>
        <translation>Kriterium nach oben</translation>
    </message>
    <message>
        <source>Move the criterion down</source>
        <translation>Kriterium nach unten</translation>
    </message>
    <message>
        <source>Take the criterion away</source>
        <translation>Kriterium entfernen</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Discard the changes</source>
        <translation>Änderungen verwerfen</translation>
    </message>
    <message>
        <source>Undo brings them back.</source>
        <translation>Rückgängig holt sie zurück.</translation>
    </message>
    <message>
        <source>Back to the class</source>
        <translation>Zurück zur Klasse</translation>
    </message>
    <message>
        <source>Save as</source>
        <translation>Speichern als</translation>
    </message>
    <message>
        <source>The class folder has a rubric “{name}”: yours takes its place.</source>
        <translation>Im Klassenordner liegt ein Raster „{name}“: Ihres tritt an seine Stelle.</translation>
    </message>
    <message>
        <source>“{name}” is the name of a rubric that comes along: for this class, yours takes its place.</source>
        <translation>„{name}“ heißt ein mitgeliefertes Raster: Für diese Klasse tritt Ihres an seine Stelle.</translation>
    </message>
    <message>
        <source>New criterion</source>
        <translation>Neues Kriterium</translation>
    </message>
    <message>
        <source>One thing is not right yet (▲).</source>
        <translation>Eine Stelle stimmt noch nicht (▲).</translation>
    </message>
    <message>
        <source>{n} things are not right yet (▲).</source>
        <translation>{n} Stellen stimmen noch nicht (▲).</translation>
    </message>
</context>
<context>
    <name>SamplePaper</name>
    <message>
        <source>Sample and pack</source>
        <translation>Stichprobe und Paket</translation>
    </message>
    <message>
        <source>Learner</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>First</source>
        <translation>Erste</translation>
    </message>
    <message>
        <source>Second</source>
        <translation>Zweite</translation>
    </message>
    <message>
        <source>Holds</source>
        <translation>Gilt</translation>
    </message>
    <message>
        <source>Why in the sample</source>
        <translation>Warum in der Stichprobe</translation>
    </message>
    <message>
        <source>Learners of the sample; Enter opens</source>
        <translation>Lernende der Stichprobe; Enter öffnet</translation>
    </message>
    <message>
        <source>Make the pack…</source>
        <translation>Paket packen…</translation>
    </message>
    <message>
        <source>Merge a reply…</source>
        <translation>Antwort übernehmen…</translation>
    </message>
    <message>
        <source>Merge a colleague&apos;s marks…</source>
        <translation>Bewertungen aus dem Kollegium übernehmen…</translation>
    </message>
    <message>
        <source>Every piece that stayed behind</source>
        <translation>Jedes Stück, das zurückblieb</translation>
    </message>
    <message>
        <source>Draw the sample</source>
        <translation>Stichprobe ziehen</translation>
    </message>
    <message>
        <source>Draw again</source>
        <translation>Neu ziehen</translation>
    </message>
    <message>
        <source>With a new seed; the drawing is kept in the journal</source>
        <translation>Mit neuem Startwert; die Ziehung bleibt im Journal</translation>
    </message>
    <message>
        <source>No sample yet. It takes every learner whose work is out of the ordinary, and an ordinary sample spread over the range of marks.</source>
        <translation>Noch keine Stichprobe. Sie nimmt alle, deren Arbeit ungewöhnlich ist, und dazu gewöhnliche, verteilt über die ganze Punktespanne.</translation>
    </message>
    <message>
        <source>{n} of {of} learners: {flagged} out of the ordinary, {rest} ordinary</source>
        <translation>{n} von {of} Lernenden: {flagged} ungewöhnlich, {rest} gewöhnlich</translation>
    </message>
    <message>
        <source>✓ {file} written, check code {code}</source>
        <translation>✓ {file} geschrieben, Prüfcode {code}</translation>
    </message>
    <message>
        <source>{file}: check code {code}, to compare by telephone.</source>
        <translation>{file}: Prüfcode {code}, zum Vergleich am Telefon.</translation>
    </message>
    <message>
        <source>Stayed behind: {n} of the learners&apos; pieces.</source>
        <translation>Zurückgeblieben: {n} Stücke der Lernenden.</translation>
    </message>
    <message>
        <source>Not fully marked when it was drawn: {who}.</source>
        <translation>Beim Ziehen noch nicht ganz bewertet: {who}.</translation>
    </message>
    <message>
        <source>Seed {n}.</source>
        <translation>Startwert {n}.</translation>
    </message>
    <message>
        <source>The sample is the whole class of {of}: it is never of fewer than {least}.</source>
        <translation>Die Stichprobe ist die ganze Klasse von {of}: Sie umfasst nie weniger als {least}.</translation>
    </message>
    <message>
        <source>The sample is the whole class of {of}: everybody is out of the ordinary, and whoever is, is always looked at.</source>
        <translation>Die Stichprobe ist die ganze Klasse von {of}: Alle sind auffällig, und wer das ist, wird immer angesehen.</translation>
    </message>
    <message>
        <source>The sample is the whole class of {of}: {flagged} are out of the ordinary and always looked at, and of the others at least {least} are taken, here all {rest}.</source>
        <translation>Die Stichprobe ist die ganze Klasse von {of}: {flagged} sind auffällig und werden immer angesehen, und von den übrigen werden mindestens {least} genommen, hier alle {rest}.</translation>
    </message>
    <message>
        <source>The moderator need not finish: a reply holds what was second-marked by then.</source>
        <translation>Die Zweitkorrektur muss nicht fertig werden: Eine Antwort enthält, was bis dahin zweitbewertet ist.</translation>
    </message>
    <message>
        <source>Make the pack</source>
        <translation>Paket packen</translation>
    </message>
    <message>
        <source>Making the pack…</source>
        <translation>Das Paket wird gepackt…</translation>
    </message>
    <message>
        <source>Left standing, in case it is a name: {quoted}. Look before you send.</source>
        <translation>Stehen geblieben, falls es ein Name ist: {quoted}. Bitte vor dem Senden ansehen.</translation>
    </message>
    <message>
        <source>Merge a reply</source>
        <translation>Antwort übernehmen</translation>
    </message>
    <message>
        <source>Merge a colleague&apos;s marks</source>
        <translation>Bewertungen aus dem Kollegium übernehmen</translation>
    </message>
</context>
<context>
    <name>SecondCard</name>
    <message>
        <source>Agree</source>
        <translation>Zustimmen</translation>
    </message>
    <message>
        <source>Level to adjust to: {c}</source>
        <translation>Andere Stufe: {c}</translation>
    </message>
    <message>
        <source>Adjust to…</source>
        <translation>Ändern in…</translation>
    </message>
    <message>
        <source>{level} · {marks:g}</source>
        <translation>{level} · {marks:g}</translation>
    </message>
    <message>
        <source>Reason or question to the first marker: {c}</source>
        <translation>Grund oder Frage an die Erstkorrektur: {c}</translation>
    </message>
    <message>
        <source>Reason to adjust, or your question</source>
        <translation>Grund der Änderung oder Ihre Frage</translation>
    </message>
    <message>
        <source>Adjust</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>Ask</source>
        <translation>Fragen</translation>
    </message>
    <message>
        <source>The first mark stands</source>
        <translation>Die erste Bewertung bleibt</translation>
    </message>
    <message>
        <source>Needs a level and a reason</source>
        <translation>Braucht eine Stufe und einen Grund</translation>
    </message>
    <message>
        <source>Needs your question in words</source>
        <translation>Braucht Ihre Frage in Worten</translation>
    </message>
    <message>
        <source>First mark, {who}: {level} ({marks:g})</source>
        <translation>Erstkorrektur, {who}: {level} ({marks:g})</translation>
    </message>
    <message>
        <source>Reason: {why}</source>
        <translation>Grund: {why}</translation>
    </message>
    <message>
        <source>Drafted from:</source>
        <translation>Entworfen aus:</translation>
    </message>
    <message>
        <source>To the learner: {text}</source>
        <translation>Rückmeldung: {text}</translation>
    </message>
    <message>
        <source>✓ you agree</source>
        <translation>✓ Sie stimmen zu</translation>
    </message>
    <message>
        <source>? you ask</source>
        <translation>? Sie fragen</translation>
    </message>
    <message>
        <source>✓ you adjust to {level} ({marks:g})</source>
        <translation>✓ Sie ändern in {level} ({marks:g})</translation>
    </message>
    <message>
        <source>not yet marked by you</source>
        <translation>von Ihnen noch nicht bewertet</translation>
    </message>
    <message>
        <source>✓ your mark</source>
        <translation>✓ Ihre Bewertung</translation>
    </message>
</context>
<context>
    <name>SecondMargin</name>
    <message>
        <source>Second marking</source>
        <translation>Zweitkorrektur</translation>
    </message>
    <message>
        <source>Show the first marks? Your levels for {learner} are then final.</source>
        <translation>Erste Bewertungen zeigen? Ihre Stufen für {learner} sind dann endgültig.</translation>
    </message>
    <message>
        <source>Undo does not reach behind the look. You may still agree, adjust or ask.</source>
        <translation>Rückgängig reicht nicht hinter den Blick zurück. Zustimmen, anpassen oder fragen können Sie weiterhin.</translation>
    </message>
    <message>
        <source>Do not ask again for this pack</source>
        <translation>Bei diesem Paket nicht mehr fragen</translation>
    </message>
    <message>
        <source>Show them</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Not yet</source>
        <translation>Noch nicht</translation>
    </message>
    <message>
        <source>✓ {n:g} of {most:g}</source>
        <translation>✓ {n:g} von {most:g}</translation>
    </message>
    <message>
        <source>{n:g} of {most:g}</source>
        <translation>{n:g} von {most:g}</translation>
    </message>
    <message>
        <source>{n} of {of} second-marked</source>
        <translation>{n} von {of} zweitkorrigiert</translation>
    </message>
    <message>
        <source>Answered {n} of {of}</source>
        <translation>Beantwortet: {n} von {of}</translation>
    </message>
    <message>
        <source>Show the first marks</source>
        <translation>Erstkorrektur zeigen</translation>
    </message>
    <message>
        <source>Once every criterion is second-marked; your own marks then stand</source>
        <translation>Sobald jedes Kriterium zweitkorrigiert ist; Ihre Bewertungen stehen dann fest</translation>
    </message>
</context>
<context>
    <name>Sentence</name>
    <message>
        <source>half swings counted</source>
        <translation>halbe Schwingungen gezählt</translation>
    </message>
    <message>
        <source>Counting half swings would explain these times: {swings} counted would be {really} complete swings, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Gezählte halbe Schwingungen würden diese Zeiten erklären: {swings} gezählte wären {really} volle Schwingungen, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>half swings counted ({swings} counted would be {really} complete swings)</source>
        <translation>halbe Schwingungen gezählt ({swings} gezählte wären {really} volle)</translation>
    </message>
    <message>
        <source>Where does one of your swings start, and where does it end?</source>
        <translation>Zeig mir eine Schwingung: Wo beginnt sie, und wo endet sie?</translation>
    </message>
    <message>
        <source>ask how the {swings} swings were counted; the video would show it</source>
        <translation>fragen, wie die {swings} Schwingungen gezählt wurden; das Video würde es zeigen</translation>
    </message>
    <message>
        <source>one swing too few in every timing</source>
        <translation>eine Schwingung zu wenig in jeder Zeit</translation>
    </message>
    <message>
        <source>One swing too few in every timing would explain these times: {really} swings instead of {swings}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Eine Schwingung zu wenig in jeder Zeit würde diese Zeiten erklären: {really} Schwingungen statt {swings}, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>one swing too few in every timing ({really} instead of {swings})</source>
        <translation>eine Schwingung zu wenig in jeder Zeit ({really} statt {swings})</translation>
    </message>
    <message>
        <source>What number did you say as you started the watch?</source>
        <translation>Welche Zahl hast du gesagt, als du die Uhr gestartet hast?</translation>
    </message>
    <message>
        <source>ask which number was said when the watch was started; the video would show it</source>
        <translation>fragen, welche Zahl beim Starten der Uhr gesagt wurde; das Video würde es zeigen</translation>
    </message>
    <message>
        <source>one swing too many in every timing</source>
        <translation>eine Schwingung zu viel in jeder Zeit</translation>
    </message>
    <message>
        <source>One swing too many in every timing would explain these times: {really} swings instead of {swings}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Eine Schwingung zu viel in jeder Zeit würde diese Zeiten erklären: {really} Schwingungen statt {swings}, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>one swing too many in every timing ({really} instead of {swings})</source>
        <translation>eine Schwingung zu viel in jeder Zeit ({really} statt {swings})</translation>
    </message>
    <message>
        <source>At which number did you stop the watch, and what did you count at the start?</source>
        <translation>Bei welcher Zahl hast du die Uhr angehalten, und was hast du am Anfang gezählt?</translation>
    </message>
    <message>
        <source>ask at which number the watch was stopped; the video would show it</source>
        <translation>fragen, bei welcher Zahl die Uhr angehalten wurde; das Video würde es zeigen</translation>
    </message>
    <message>
        <source>one timing with a swing too many or too few</source>
        <translation>eine Zeit mit einer Schwingung zu viel oder zu wenig</translation>
    </message>
    <message>
        <source>A miscount in one timing would explain it: {time} s at {length} ({timing}) fits {really} swings instead of {swings}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Ein Zählfehler in einer Zeit würde es erklären: {time} s bei {length} ({timing}) passen zu {really} Schwingungen statt {swings}, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>a miscount in one timing ({time} s at {length} would be {really} swings)</source>
        <translation>ein Zählfehler in einer Zeit ({time} s bei {length} wären {really} Schwingungen)</translation>
    </message>
    <message>
        <source>How sure are you of the count in {timing} at {length}?</source>
        <translation>Wie sicher bist du dir beim Zählen bei {length} (gemeint ist {timing})?</translation>
    </message>
    <message>
        <source>have {timing} at {length} taken again</source>
        <translation>{timing} bei {length} noch einmal messen lassen</translation>
    </message>
    <message>
        <source>lengths to the top of the bob</source>
        <translation>Längen bis zur Oberkante des Pendelkörpers</translation>
    </message>
    <message>
        <source>Lengths measured to the top of the bob would explain it: each is short by about {size}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Längen bis zur Oberkante des Pendelkörpers würden es erklären: Jede ist um etwa {size} zu kurz, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>lengths measured to the top of the bob (each short by about {size})</source>
        <translation>Längen bis zur Oberkante des Pendelkörpers gemessen (jede um etwa {size} zu kurz)</translation>
    </message>
    <message>
        <source>From where to where on the pendulum did you measure?</source>
        <translation>Zeig mir am Pendel, von wo bis wo du gemessen hast.</translation>
    </message>
    <message>
        <source>ask from where to where the length was measured, or look at the set-up photo; measure the bob</source>
        <translation>fragen, von wo bis wo die Länge gemessen wurde, oder das Aufbaufoto ansehen; den Pendelkörper messen</translation>
    </message>
    <message>
        <source>lengths to the bottom of the bob</source>
        <translation>Längen bis zur Unterkante des Pendelkörpers</translation>
    </message>
    <message>
        <source>Lengths measured to the bottom of the bob would explain it: each is long by about {size}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Längen bis zur Unterkante des Pendelkörpers würden es erklären: Jede ist um etwa {size} zu lang, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>lengths measured to the bottom of the bob (each long by about {size})</source>
        <translation>Längen bis zur Unterkante des Pendelkörpers gemessen (jede um etwa {size} zu lang)</translation>
    </message>
    <message>
        <source>the whole thread measured</source>
        <translation>der ganze Faden gemessen</translation>
    </message>
    <message>
        <source>Measuring the whole thread, knot and tail included, would explain it: each length is long by about {size}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Der ganze Faden, mit Knoten und losem Ende gemessen, würde es erklären: Jede Länge ist um etwa {size} zu lang, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>the whole thread measured, knot and tail included (each length long by about {size})</source>
        <translation>der ganze Faden gemessen, mit Knoten und losem Ende (jede Länge um etwa {size} zu lang)</translation>
    </message>
    <message>
        <source>Did you measure the thread before or after tying it? From where to where?</source>
        <translation>Hast du den Faden vor oder nach dem Anbinden gemessen? Von wo bis wo?</translation>
    </message>
    <message>
        <source>ask when and where the thread was measured; the set-up photo may show knot and tail</source>
        <translation>fragen, wann und von wo bis wo der Faden gemessen wurde; das Aufbaufoto zeigt vielleicht Knoten und loses Ende</translation>
    </message>
    <message>
        <source>lengths in another unit</source>
        <translation>Längen in einer anderen Einheit</translation>
    </message>
    <message>
        <source>Lengths meant in {unit} would explain it: {length_typed} would be {length_meant}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Längen in einer anderen Einheit ({unit}) würden es erklären: {length_typed} wären {length_meant}, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>lengths meant in {unit} ({length_typed} would be {length_meant})</source>
        <translation>Längen in einer anderen Einheit: {unit} ({length_typed} wären {length_meant})</translation>
    </message>
    <message>
        <source>Which unit is your ruler marked in, and which did you write down?</source>
        <translation>In welcher Einheit ist dein Lineal geteilt, und welche hast du aufgeschrieben?</translation>
    </message>
    <message>
        <source>ask to see the ruler, or look at the set-up photo</source>
        <translation>sich das Lineal zeigen lassen oder das Aufbaufoto ansehen</translation>
    </message>
    <message>
        <source>periods in the column of total times</source>
        <translation>Schwingungsdauern in der Spalte der Gesamtzeiten</translation>
    </message>
    <message>
        <source>Periods typed in place of total times would explain it: {time} s is the time of one swing, not of {swings}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Schwingungsdauern anstelle der Gesamtzeiten würden es erklären: {time} s sind die Zeit einer Schwingung, nicht von {swings}, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>periods typed in place of total times ({time} s would be one swing)</source>
        <translation>Schwingungsdauern anstelle der Gesamtzeiten ({time} s wären eine Schwingung)</translation>
    </message>
    <message>
        <source>Is {time} s what the watch showed, or did you divide it first?</source>
        <translation>Hat die Uhr {time} s angezeigt, oder hast du vorher geteilt?</translation>
    </message>
    <message>
        <source>ask what the watch showed</source>
        <translation>fragen, was die Uhr angezeigt hat</translation>
    </message>
    <message>
        <source>minutes and seconds run together</source>
        <translation>Minuten und Sekunden vermengt</translation>
    </message>
    <message>
        <source>A misread display ({form}) would explain it: {time} s at {length} would be {time_meant} s, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Eine falsch gelesene Anzeige ({form}) würde es erklären: {time} s bei {length} wären {time_meant} s, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>a misread display ({form}: {time} s at {length} would be {time_meant} s)</source>
        <translation>eine falsch gelesene Anzeige ({form}: {time} s bei {length} wären {time_meant} s)</translation>
    </message>
    <message>
        <source>What exactly did the watch show for {length}, sign by sign?</source>
        <translation>Lies mir Zeichen für Zeichen vor, was die Uhr bei {length} angezeigt hat.</translation>
    </message>
    <message>
        <source>ask to see the watch with a time on it</source>
        <translation>sich die Uhr mit einer Zeit darauf zeigen lassen</translation>
    </message>
    <message>
        <source>a wide swing</source>
        <translation>ein weiter Ausschlag</translation>
    </message>
    <message>
        <source>A wide swing, released at about {amplitude}, would explain periods that are all long by the same share.</source>
        <translation>Ein weiter Ausschlag, losgelassen bei etwa {amplitude}, würde Schwingungsdauern erklären, die alle um denselben Anteil zu lang sind.</translation>
    </message>
    <message>
        <source>a wide swing, released at about {amplitude}</source>
        <translation>ein weiter Ausschlag, losgelassen bei etwa {amplitude}</translation>
    </message>
    <message>
        <source>How far out did you pull the bob before letting go?</source>
        <translation>Wie weit hast du den Pendelkörper vor dem Loslassen ausgelenkt?</translation>
    </message>
    <message>
        <source>ask how far the bob was pulled out; the video would show it</source>
        <translation>fragen, wie weit der Pendelkörper ausgelenkt wurde; das Video würde es zeigen</translation>
    </message>
    <message>
        <source>one cell mistyped</source>
        <translation>eine Zelle vertippt</translation>
    </message>
    <message>
        <source>A typing slip in one cell would explain it: {typed} at {where} fits its neighbours as {meant}, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Ein Tippfehler in einer Zelle würde es erklären: {typed} ({where}) passt als {meant} zu den Nachbarn, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>a typing slip in one cell ({typed} at {where}, meant as {meant})</source>
        <translation>ein Tippfehler in einer Zelle ({typed}, {where}; gemeint {meant})</translation>
    </message>
    <message>
        <source>What do your first notes say for {where}?</source>
        <translation>Was steht in deinen ersten Notizen an dieser Stelle ({where})?</translation>
    </message>
    <message>
        <source>look at the learner&apos;s first notes for {where}</source>
        <translation>in den ersten Notizen nachsehen ({where})</translation>
    </message>
    <message>
        <source>two rows exchanged</source>
        <translation>zwei Zeilen vertauscht</translation>
    </message>
    <message>
        <source>Two rows exchanged would explain it: the times beside {length} and {other_length} fit the other way about, and g becomes {g_mended} instead of {g_before}.</source>
        <translation>Zwei vertauschte Zeilen würden es erklären: Die Zeiten neben {length} und {other_length} passen umgekehrt, und g wird {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>two rows exchanged (the times beside {length} and {other_length})</source>
        <translation>zwei Zeilen vertauscht (die Zeiten neben {length} und {other_length})</translation>
    </message>
    <message>
        <source>Which of these times belongs to {length}, and which to {other_length}?</source>
        <translation>Welche dieser Zeiten gehört zu {length}, und welche zu {other_length}?</translation>
    </message>
    <message>
        <source>look at the learner&apos;s first notes for {length} and {other_length}</source>
        <translation>in den ersten Notizen zu {length} und {other_length} nachsehen</translation>
    </message>
    <message>
        <source>times nearer to the formula than a hand can time</source>
        <translation>Zeiten näher an der Formel, als eine Hand stoppen kann</translation>
    </message>
    <message>
        <source>times within about {misfit} s of the formula with g = {formula_g} m/s²</source>
        <translation>Zeiten auf etwa {misfit} s bei der Formel mit g = {formula_g} m/s²</translation>
    </message>
    <message>
        <source>How did you time one length, and what do your first notes say?</source>
        <translation>Zeig mir, wie du eine Länge gestoppt hast, und deine ersten Notizen.</translation>
    </message>
    <message>
        <source>watch one length being timed again</source>
        <translation>zusehen, wie eine Länge noch einmal gestoppt wird</translation>
    </message>
    <message>
        <source>repeats closer than a hand can repeat</source>
        <translation>Wiederholungen enger, als eine Hand wiederholen kann</translation>
    </message>
    <message>
        <source>repeats that agree to about {misfit} s</source>
        <translation>Wiederholungen, die auf etwa {misfit} s übereinstimmen</translation>
    </message>
    <message>
        <source>How did you take the second timing of a length?</source>
        <translation>Wie hast du die zweite Zeit zu einer Länge gemessen?</translation>
    </message>
    <message>
        <source>watch one length being timed twice</source>
        <translation>zusehen, wie eine Länge zweimal gestoppt wird</translation>
    </message>
    <message>
        <source>different lengths asked for</source>
        <translation>verlangte verschiedene Längen</translation>
    </message>
    <message>
        <source>timings asked for at each length</source>
        <translation>verlangte Zeiten je Länge</translation>
    </message>
    <message>
        <source>swings asked for in each timing</source>
        <translation>verlangte Schwingungen je Zeitmessung</translation>
    </message>
    <message>
        <source>least ratio of longest to shortest length</source>
        <translation>kleinstes Verhältnis von größter zu kleinster Länge</translation>
    </message>
    <message>
        <source>pieces of evidence asked for</source>
        <translation>verlangte Belege</translation>
    </message>
    <message>
        <source>tolerance on g</source>
        <translation>Toleranz für g</translation>
    </message>
    <message>
        <source>the place in the brief</source>
        <translation>der Ort im Auftrag</translation>
    </message>
    <message>
        <source>the syllabus&apos;s word for the variable that is set</source>
        <translation>das Wort des Lehrplans für die eingestellte Größe</translation>
    </message>
    <message>
        <source>the syllabus&apos;s word for the variable that is measured</source>
        <translation>das Wort des Lehrplans für die gemessene Größe</translation>
    </message>
    <message>
        <source>the syllabus&apos;s word for a variable that is kept the same</source>
        <translation>das Wort des Lehrplans für eine gleich gehaltene Größe</translation>
    </message>
    <message>
        <source>a photo of the set-up</source>
        <translation>ein Foto vom Aufbau</translation>
    </message>
    <message>
        <source>a photo of the learner with the set-up</source>
        <translation>ein Foto der Person mit dem Aufbau</translation>
    </message>
    <message>
        <source>a swing video</source>
        <translation>ein Schwingungsvideo</translation>
    </message>
    <message>
        <source>a written report</source>
        <translation>ein schriftlicher Bericht</translation>
    </message>
    <message>
        <source>asked-for pieces of evidence</source>
        <translation>vorhandene verlangte Belege</translation>
    </message>
    <message>
        <source>missing pieces of evidence</source>
        <translation>fehlende Belege</translation>
    </message>
    <message>
        <source>pieces that nobody has told apart yet</source>
        <translation>noch nicht zugeordnete Stücke</translation>
    </message>
    <message>
        <source>pieces that will not open</source>
        <translation>Stücke, die sich nicht öffnen lassen</translation>
    </message>
    <message>
        <source>the missing pieces</source>
        <translation>die fehlenden Stücke</translation>
    </message>
    <message>
        <source>the pieces that are there</source>
        <translation>die vorhandenen Stücke</translation>
    </message>
    <message>
        <source>questions about the photos</source>
        <translation>Fragen zu den Fotos</translation>
    </message>
    <message>
        <source>questions about the video</source>
        <translation>Fragen zum Video</translation>
    </message>
    <message>
        <source>a video that shows fewer swings than asked</source>
        <translation>ein Video mit weniger Schwingungen als verlangt</translation>
    </message>
    <message>
        <source>a video whose period differs from the table</source>
        <translation>ein Video, dessen Schwingungsdauer von der Tabelle abweicht</translation>
    </message>
    <message>
        <source>readings that could be used</source>
        <translation>brauchbare Messwerte</translation>
    </message>
    <message>
        <source>different lengths</source>
        <translation>verschiedene Längen</translation>
    </message>
    <message>
        <source>timings at the length timed least often</source>
        <translation>Zeiten bei der am seltensten gestoppten Länge</translation>
    </message>
    <message>
        <source>timings in all</source>
        <translation>Zeiten insgesamt</translation>
    </message>
    <message>
        <source>lengths timed once only</source>
        <translation>nur einmal gestoppte Längen</translation>
    </message>
    <message>
        <source>swings in the shortest count</source>
        <translation>Schwingungen in der kürzesten Zählung</translation>
    </message>
    <message>
        <source>swings timed in all</source>
        <translation>gestoppte Schwingungen insgesamt</translation>
    </message>
    <message>
        <source>time watched in all</source>
        <translation>beobachtete Zeit insgesamt</translation>
    </message>
    <message>
        <source>ratio of longest to shortest length</source>
        <translation>Verhältnis von größter zu kleinster Länge</translation>
    </message>
    <message>
        <source>shortest length</source>
        <translation>kleinste Länge</translation>
    </message>
    <message>
        <source>longest length</source>
        <translation>größte Länge</translation>
    </message>
    <message>
        <source>lengths inside the brief&apos;s range</source>
        <translation>Längen im Bereich des Auftrags</translation>
    </message>
    <message>
        <source>evenly spread lengths</source>
        <translation>gleichmäßig verteilte Längen</translation>
    </message>
    <message>
        <source>widest gap between neighbouring lengths</source>
        <translation>größte Lücke zwischen benachbarten Längen</translation>
    </message>
    <message>
        <source>the same number of decimals down each column</source>
        <translation>gleich viele Nachkommastellen in jeder Spalte</translation>
    </message>
    <message>
        <source>decimals of the times as written</source>
        <translation>Nachkommastellen der Zeiten, wie geschrieben</translation>
    </message>
    <message>
        <source>a unit in every heading that needs one</source>
        <translation>eine Einheit in jedem Spaltenkopf, der eine braucht</translation>
    </message>
    <message>
        <source>a heading without a unit</source>
        <translation>ein Spaltenkopf ohne Einheit</translation>
    </message>
    <message>
        <source>usual scatter of repeated timings</source>
        <translation>übliche Streuung wiederholter Zeiten</translation>
    </message>
    <message>
        <source>widest difference between repeats</source>
        <translation>größter Unterschied zwischen Wiederholungen</translation>
    </message>
    <message>
        <source>length whose repeats differ most</source>
        <translation>Länge mit dem größten Unterschied der Wiederholungen</translation>
    </message>
    <message>
        <source>shortest of the repeats that differ most</source>
        <translation>kürzeste der am stärksten abweichenden Wiederholungen</translation>
    </message>
    <message>
        <source>longest of the repeats that differ most</source>
        <translation>längste der am stärksten abweichenden Wiederholungen</translation>
    </message>
    <message>
        <source>timings that depart from their repeats</source>
        <translation>Zeiten, die von ihren Wiederholungen abweichen</translation>
    </message>
    <message>
        <source>length of an example</source>
        <translation>Länge eines Beispiels</translation>
    </message>
    <message>
        <source>timings of an example</source>
        <translation>Zeiten eines Beispiels</translation>
    </message>
    <message>
        <source>mean time at the longest length</source>
        <translation>mittlere Zeit bei der größten Länge</translation>
    </message>
    <message>
        <source>mean time at the shortest length</source>
        <translation>mittlere Zeit bei der kleinsten Länge</translation>
    </message>
    <message>
        <source>points on the graph</source>
        <translation>Punkte im Diagramm</translation>
    </message>
    <message>
        <source>g from the straight line</source>
        <translation>g aus der Geraden</translation>
    </message>
    <message>
        <source>standard uncertainty of g</source>
        <translation>Standardunsicherheit von g</translation>
    </message>
    <message>
        <source>local g</source>
        <translation>das örtliche g</translation>
    </message>
    <message>
        <source>difference of g from local g</source>
        <translation>Abweichung von g gegenüber dem örtlichen g</translation>
    </message>
    <message>
        <source>g within the tolerance of local g</source>
        <translation>g innerhalb der Toleranz um das örtliche g</translation>
    </message>
    <message>
        <source>g above local g</source>
        <translation>g über dem örtlichen g</translation>
    </message>
    <message>
        <source>agreement of g with local g within its own scatter</source>
        <translation>Übereinstimmung von g mit dem örtlichen g innerhalb der eigenen Streuung</translation>
    </message>
    <message>
        <source>best estimate of g</source>
        <translation>beste Schätzung von g</translation>
    </message>
    <message>
        <source>standard uncertainty of the best g</source>
        <translation>Standardunsicherheit der besten Schätzung von g</translation>
    </message>
    <message>
        <source>smallest g of a single length</source>
        <translation>kleinstes g einer einzelnen Länge</translation>
    </message>
    <message>
        <source>largest g of a single length</source>
        <translation>größtes g einer einzelnen Länge</translation>
    </message>
    <message>
        <source>slope of T² against L</source>
        <translation>Steigung von T² über L</translation>
    </message>
    <message>
        <source>intercept of T² against L</source>
        <translation>Achsenabschnitt von T² über L</translation>
    </message>
    <message>
        <source>an intercept larger than scatter explains</source>
        <translation>ein Achsenabschnitt größer, als die Streuung erklärt</translation>
    </message>
    <message>
        <source>R² of the line</source>
        <translation>R² der Geraden</translation>
    </message>
    <message>
        <source>points far off the line</source>
        <translation>Punkte weit neben der Geraden</translation>
    </message>
    <message>
        <source>length farthest from the line</source>
        <translation>Länge am weitesten neben der Geraden</translation>
    </message>
    <message>
        <source>mean time at the length farthest from the line</source>
        <translation>mittlere Zeit bei der Länge am weitesten neben der Geraden</translation>
    </message>
    <message>
        <source>largest departure of a mean time from the line</source>
        <translation>größte Abweichung einer mittleren Zeit von der Geraden</translation>
    </message>
    <message>
        <source>a worst length that is slow rather than quick</source>
        <translation>eine auffälligste Länge, die langsam statt schnell ist</translation>
    </message>
    <message>
        <source>period at the shortest length</source>
        <translation>Schwingungsdauer bei der kleinsten Länge</translation>
    </message>
    <message>
        <source>period at the longest length</source>
        <translation>Schwingungsdauer bei der größten Länge</translation>
    </message>
    <message>
        <source>T² at the longest length</source>
        <translation>T² bei der größten Länge</translation>
    </message>
    <message>
        <source>T² at the shortest length</source>
        <translation>T² bei der kleinsten Länge</translation>
    </message>
    <message>
        <source>the explanation that the readings suggest</source>
        <translation>die Erklärung, die die Messwerte nahelegen</translation>
    </message>
    <message>
        <source>probability of that explanation</source>
        <translation>Wahrscheinlichkeit dieser Erklärung</translation>
    </message>
    <message>
        <source>the explanation that the teacher agreed on</source>
        <translation>die Erklärung, der die Lehrkraft zugestimmt hat</translation>
    </message>
    <message>
        <source>a count of swings agreed to be another</source>
        <translation>eine bestätigte andere Zahl von Schwingungen</translation>
    </message>
    <message>
        <source>a unit or a display agreed to be misread</source>
        <translation>eine bestätigte falsch gelesene Einheit oder Anzeige</translation>
    </message>
    <message>
        <source>times agreed to be closer than a hand can time</source>
        <translation>Zeiten, die bestätigt näher liegen, als eine Hand stoppen kann</translation>
    </message>
    <message>
        <source>the agreed explanation, in the learner&apos;s numbers</source>
        <translation>die bestätigte Erklärung in den Zahlen der Person</translation>
    </message>
    <message>
        <source>the question that would settle it</source>
        <translation>die Frage, die es klären würde</translation>
    </message>
    <message>
        <source>g once mended</source>
        <translation>g nach der Richtigstellung</translation>
    </message>
    <message>
        <source>days late</source>
        <translation>Tage Verspätung</translation>
    </message>
    <message>
        <source>work handed in</source>
        <translation>abgegebene Arbeit</translation>
    </message>
    <message>
        <source>findings to look at before marking</source>
        <translation>Befunde zum Ansehen vor dem Bewerten</translation>
    </message>
    <message>
        <source>questions to put to the learner</source>
        <translation>Fragen an die Person</translation>
    </message>
    <message>
        <source>a table of readings that could not be understood</source>
        <translation>eine nicht verstandene Messwerttabelle</translation>
    </message>
    <message>
        <source>own mean times</source>
        <translation>eigene Mittelwerte der Zeiten</translation>
    </message>
    <message>
        <source>own periods T</source>
        <translation>eigene Schwingungsdauern T</translation>
    </message>
    <message>
        <source>own T² values</source>
        <translation>eigene Werte für T²</translation>
    </message>
    <message>
        <source>an own value of g</source>
        <translation>ein eigener Wert für g</translation>
    </message>
    <message>
        <source>of the columns mean, T, T² and g worked out</source>
        <translation>ausgerechnete Spalten von Mittelwert, T, T² und g</translation>
    </message>
    <message>
        <source>values worked out</source>
        <translation>ausgerechnete Werte</translation>
    </message>
    <message>
        <source>worked-out values that differ from the readings</source>
        <translation>ausgerechnete Werte, die nicht zu den Messwerten passen</translation>
    </message>
    <message>
        <source>arithmetic that follows from the readings</source>
        <translation>Rechnung, die aus den Messwerten folgt</translation>
    </message>
    <message>
        <source>the first cell that differs</source>
        <translation>die erste abweichende Zelle</translation>
    </message>
    <message>
        <source>what the first differing cell says</source>
        <translation>was in der ersten abweichenden Zelle steht</translation>
    </message>
    <message>
        <source>what differs</source>
        <translation>was abweicht</translation>
    </message>
    <message>
        <source>what the first differing value comes to</source>
        <translation>was der erste abweichende Wert ergibt</translation>
    </message>
    <message>
        <source>own value of g</source>
        <translation>eigener Wert für g</translation>
    </message>
    <message>
        <source>the photo is broken or breaks off</source>
        <translation>das Foto ist beschädigt oder bricht ab</translation>
    </message>
    <message>
        <source>the file is larger than {n} MB</source>
        <translation>die Datei ist größer als {n} MB</translation>
    </message>
    <message>
        <source>the file is larger than {n} GB</source>
        <translation>die Datei ist größer als {n} GB</translation>
    </message>
    <message>
        <source>the file is empty</source>
        <translation>die Datei ist leer</translation>
    </message>
    <message>
        <source>the file is not a JPEG, PNG, WebP or HEIC photo</source>
        <translation>die Datei ist kein Foto in JPEG, PNG, WebP oder HEIC</translation>
    </message>
    <message>
        <source>the photo has {width} × {height} pixels, more than can be opened</source>
        <translation>das Foto hat {width} × {height} Pixel, mehr als sich öffnen lassen</translation>
    </message>
    <message>
        <source>looking at the file took longer than {n} s</source>
        <translation>das Ansehen der Datei dauerte länger als {n} s</translation>
    </message>
    <message>
        <source>the file made its reader fail</source>
        <translation>beim Lesen der Datei ist ein Fehler aufgetreten</translation>
    </message>
    <message>
        <source>the file holds no picture track</source>
        <translation>die Datei enthält keine Bildspur</translation>
    </message>
    <message>
        <source>the picture is too large</source>
        <translation>das Bild ist zu groß</translation>
    </message>
    <message>
        <source>decoding took longer than {n} s</source>
        <translation>das Entschlüsseln dauerte länger als {n} s</translation>
    </message>
    <message>
        <source>{name} was moved or deleted while it was open; nothing was saved.</source>
        <translation>{name} wurde verschoben oder gelöscht, während die Datei offen war; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{name} may not be written to: the file or its folder is read-only.</source>
        <translation>{name} darf nicht beschrieben werden: Die Datei oder ihr Ordner ist schreibgeschützt.</translation>
    </message>
    <message>
        <source>{name} is being written by another program; nothing was saved. Try again in a moment.</source>
        <translation>{name} wird gerade von einem anderen Programm beschrieben; nichts wurde gespeichert. Bitte gleich noch einmal versuchen.</translation>
    </message>
    <message>
        <source>{name} is being written by another window; nothing was saved. Try again in a moment.</source>
        <translation>{name} wird gerade von einem anderen Fenster beschrieben; nichts wurde gespeichert. Bitte gleich noch einmal versuchen.</translation>
    </message>
    <message>
        <source>The disk with {name} is full; nothing was saved. Free some space and try again.</source>
        <translation>Der Datenträger mit {name} ist voll; nichts wurde gespeichert. Bitte Platz schaffen und noch einmal versuchen.</translation>
    </message>
    <message>
        <source>The disk or share with {name} did not answer; nothing was saved.</source>
        <translation>Der Datenträger oder die Freigabe mit {name} hat nicht geantwortet; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{name} cannot be opened: its folder is missing, out of reach or not yours to write in.</source>
        <translation>{name} lässt sich nicht öffnen: Der Ordner fehlt, ist nicht erreichbar oder für Sie nicht beschreibbar.</translation>
    </message>
    <message>
        <source>{name} is not yours to open.</source>
        <translation>{name} dürfen Sie nicht öffnen.</translation>
    </message>
    <message>
        <source>{name} is append-only: a decision once written is never changed or deleted.</source>
        <translation>An {name} wird nur angefügt: Eine geschriebene Entscheidung wird nie geändert oder gelöscht.</translation>
    </message>
    <message>
        <source>{name} did not answer; nothing was saved.</source>
        <translation>{name} hat nicht geantwortet; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{name} is open for reading only; nothing was saved.</source>
        <translation>{name} ist nur zum Lesen offen; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{name} did not accept the name or the password.</source>
        <translation>{name} hat Name oder Kennwort nicht angenommen.</translation>
    </message>
    <message>
        <source>{name}: there is no such database on the server.</source>
        <translation>{name}: Auf dem Server gibt es keine solche Datenbank.</translation>
    </message>
    <message>
        <source>{name} is not yours to write in.</source>
        <translation>In {name} dürfen Sie nicht schreiben.</translation>
    </message>
    <message>
        <source>The disk of the server with {name} is full; nothing was saved.</source>
        <translation>Der Datenträger des Servers mit {name} ist voll; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{name} was shut down; nothing was saved.</source>
        <translation>{name} wurde beendet; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{name} is damaged. Nothing is lost yet: it can be rebuilt from what can be read.</source>
        <translation>{name} ist beschädigt. Noch ist nichts verloren: Aus dem, was lesbar ist, lässt sich die Datei wiederherstellen.</translation>
    </message>
    <message>
        <source>A piece is missing</source>
        <translation>Ein Stück fehlt</translation>
    </message>
    <message>
        <source>The brief asks for a piece of evidence that is not in the portfolio, or is an empty file.</source>
        <translation>Der Auftrag verlangt ein Stück, das in der Abgabe fehlt oder eine leere Datei ist.</translation>
    </message>
    <message>
        <source>Handed in outside the dates</source>
        <translation>Außerhalb der Abgabetage abgegeben</translation>
    </message>
    <message>
        <source>The latest file carries a date outside the brief&apos;s window or the learner&apos;s extension. Copying and sending files can change their dates.</source>
        <translation>Die neueste Datei trägt ein Datum außerhalb der Tage des Auftrags oder der Verlängerung. Beim Kopieren und Verschicken kann sich das Datum ändern.</translation>
    </message>
    <message>
        <source>Fewer lengths than asked</source>
        <translation>Weniger Längen als verlangt</translation>
    </message>
    <message>
        <source>A straight line needs enough points; the brief says how many.</source>
        <translation>Eine Gerade braucht genug Punkte; der Auftrag sagt, wie viele.</translation>
    </message>
    <message>
        <source>Timings not repeated</source>
        <translation>Zeiten nicht wiederholt</translation>
    </message>
    <message>
        <source>Repeating a timing shows its scatter and lessens random error.</source>
        <translation>Wiederholen zeigt die Streuung und verkleinert zufällige Abweichungen.</translation>
    </message>
    <message>
        <source>Lengths too close together</source>
        <translation>Längen zu nah beieinander</translation>
    </message>
    <message>
        <source>A short range of lengths leaves the slope, and so g, uncertain.</source>
        <translation>Ein kleiner Bereich der Längen lässt die Steigung und damit g unsicher.</translation>
    </message>
    <message>
        <source>Lengths unevenly spread</source>
        <translation>Längen ungleich verteilt</translation>
    </message>
    <message>
        <source>One wide gap makes the line rest on two clusters of points.</source>
        <translation>Bei einer großen Lücke ruht die Gerade auf zwei Punkthaufen.</translation>
    </message>
    <message>
        <source>A length outside the sensible range</source>
        <translation>Eine Länge außerhalb des sinnvollen Bereichs</translation>
    </message>
    <message>
        <source>Often a unit, sometimes a length that the support could not hold.</source>
        <translation>Oft eine Einheit, manchmal eine Länge, für die die Aufhängung nicht reicht.</translation>
    </message>
    <message>
        <source>Fewer swings to a timing</source>
        <translation>Weniger Schwingungen je Zeitmessung</translation>
    </message>
    <message>
        <source>Hand scatter is shared out over the swings of a timing: fewer swings, rougher periods.</source>
        <translation>Die Streuung der Hand verteilt sich auf die Schwingungen einer Zeitmessung: weniger Schwingungen, gröbere Schwingungsdauern.</translation>
    </message>
    <message>
        <source>A timing far from the local law</source>
        <translation>Eine Zeit weit neben dem Pendelgesetz</translation>
    </message>
    <message>
        <source>Each timing is set against N·2π√(L/g) with local g, allowing for hand scatter, a few millimetres of length and a small amplitude.</source>
        <translation>Jede Zeit wird mit N·2π√(L/g) und dem örtlichen g verglichen; Streuung der Hand, einige Millimeter Länge und ein kleiner Ausschlag sind zugestanden.</translation>
    </message>
    <message>
        <source>g of the line far from local g</source>
        <translation>g der Geraden weit neben dem örtlichen g</translation>
    </message>
    <message>
        <source>The slope of the learner&apos;s own line against the local one, in units of its uncertainty. A rough line may be far off and still be honest; this asks only when it is not rough.</source>
        <translation>Die Steigung der eigenen Geraden gegenüber der örtlichen, gemessen an ihrer Unsicherheit. Eine grobe Gerade darf weit daneben liegen und doch redlich sein; gefragt wird nur, wenn sie nicht grob ist.</translation>
    </message>
    <message>
        <source>A timing departs from its repeat</source>
        <translation>Eine Zeit weicht von ihrer Wiederholung ab</translation>
    </message>
    <message>
        <source>Two timings of one length differ by more than the scatter of the others allows; often one swing more or fewer was counted.</source>
        <translation>Zwei Zeiten einer Länge liegen weiter auseinander, als die Streuung der übrigen zulässt; oft wurde eine Schwingung mehr oder weniger gezählt.</translation>
    </message>
    <message>
        <source>A point off the line of the others</source>
        <translation>Ein Punkt neben der Geraden der übrigen</translation>
    </message>
    <message>
        <source>The externally studentised residual of the straight line, with the chance shared over all points.</source>
        <translation>Das extern studentisierte Residuum der Geraden; der Zufall ist auf alle Punkte verteilt.</translation>
    </message>
    <message>
        <source>The line misses the origin</source>
        <translation>Die Gerade verfehlt den Ursprung</translation>
    </message>
    <message>
        <source>T² is proportional to the length from support to the middle of the bob; a shift of every length by the same amount shows as an intercept.</source>
        <translation>T² ist proportional zur Länge von der Aufhängung bis zur Mitte des Pendelkörpers; sind alle Längen um dasselbe Stück verschoben, zeigt sich das als Achsenabschnitt.</translation>
    </message>
    <message>
        <source>Own arithmetic comes out differently</source>
        <translation>Die eigene Rechnung ergibt etwas anderes</translation>
    </message>
    <message>
        <source>Means, T, T² and g in the learner&apos;s table are worked out again from the raw readings, following the learner&apos;s own rounding.</source>
        <translation>Mittelwerte, T, T² und g der Tabelle werden aus den Messwerten nachgerechnet, mit der Rundung der Person.</translation>
    </message>
    <message>
        <source>Decimals not consistent</source>
        <translation>Uneinheitliche Nachkommastellen</translation>
    </message>
    <message>
        <source>Raw readings of one instrument carry the same number of decimals. Spreadsheets drop trailing zeros, and that is allowed for.</source>
        <translation>Messwerte eines Geräts haben gleich viele Nachkommastellen. Tabellenprogramme lassen Nullen am Ende weg; das ist berücksichtigt.</translation>
    </message>
    <message>
        <source>A heading without its unit</source>
        <translation>Ein Spaltenkopf ohne Einheit</translation>
    </message>
    <message>
        <source>A column is headed quantity / unit (SI Brochure, 9th ed., 5.4.1).</source>
        <translation>Über einer Spalte steht Größe / Einheit (SI-Broschüre, 9. Aufl., 5.4.1).</translation>
    </message>
    <message>
        <source>{equal} of {compared} timings are the same to the last digit as {whose}, {near} more lie within 0.05 s.</source>
        <translation>{equal} von {compared} Zeiten stimmen bis auf die letzte Stelle mit {whose} überein, {near} weitere liegen höchstens 0,05 s auseinander.</translation>
    </message>
    <message>
        <source>{equal} of {compared} timings are the same to the last digit as {whose}.</source>
        <translation>{equal} von {compared} Zeiten stimmen bis auf die letzte Stelle mit {whose} überein.</translation>
    </message>
    <message>
        <source>Independent hands agree as closely in at most 1 pair of {n:,}.</source>
        <translation>Unabhängig gestoppte Zeiten stimmen höchstens bei 1 von {n:,} Paaren so genau überein.</translation>
    </message>
    <message>
        <source>This one was handed in after the other.</source>
        <translation>Diese Abgabe kam nach der anderen.</translation>
    </message>
    <message>
        <source>They are declared as partners, which explains it.</source>
        <translation>Die beiden sind als Paar angegeben, was es erklärt.</translation>
    </message>
    <message>
        <source>{whose} after {shift} s on all of them</source>
        <translation>{whose} (nach {shift} s auf allen)</translation>
    </message>
    <message>
        <source>This one was handed in before the other.</source>
        <translation>Diese Abgabe kam vor der anderen.</translation>
    </message>
    <message>
        <source>Did you share a set-up or a table of readings?</source>
        <translation>Habt ihr einen Aufbau oder eine Messwerttabelle geteilt?</translation>
    </message>
    <message>
        <source>Did you two share a set-up or a table of readings?</source>
        <translation>Habt ihr beide einen Aufbau oder eine Messwerttabelle geteilt?</translation>
    </message>
    <message>
        <source>those of {whom}</source>
        <translation>denen von {whom}</translation>
    </message>
    <message>
        <source>{name}&apos;s</source>
        <translation>denen von {name}</translation>
    </message>
    <message>
        <source>{n} different length timed ({lengths}); the brief asks for {wanted}.</source>
        <translation>Bei {n} Länge ({lengths}) wurde die Zeit gemessen; der Auftrag verlangt {wanted}.</translation>
    </message>
    <message>
        <source>{n} different lengths timed ({lengths}); the brief asks for {wanted}.</source>
        <translation>Bei {n} verschiedenen Längen ({lengths}) wurde die Zeit gemessen; der Auftrag verlangt {wanted}.</translation>
    </message>
    <message>
        <source>Timings per length below the {wanted} asked for at {lengths}.</source>
        <translation>Weniger Zeiten je Länge als die verlangten {wanted} bei {lengths}.</translation>
    </message>
    <message>
        <source>The longest length ({longest}) is {ratio:.2f} times the shortest ({shortest}); the brief asks for at least {wanted:g} times.</source>
        <translation>Die größte Länge ({longest}) ist das {ratio:.2f}-Fache der kleinsten ({shortest}); der Auftrag verlangt mindestens das {wanted:g}-Fache.</translation>
    </message>
    <message>
        <source>The gap from {low} to {high} takes {share:.0%} of the whole range of lengths.</source>
        <translation>Die Lücke von {low} bis {high} nimmt {share:.0%} des ganzen Bereichs der Längen ein.</translation>
    </message>
    <message>
        <source>{counts} swing to a timing at {n} of {of} lengths; the brief asks for {least}.</source>
        <translation>{counts} Schwingung je Zeitmessung bei {n} von {of} Längen; der Auftrag verlangt {least}.</translation>
    </message>
    <message>
        <source>{counts} swings to a timing at {n} of {of} lengths; the brief asks for {least}.</source>
        <translation>{counts} Schwingungen je Zeitmessung bei {n} von {of} Längen; der Auftrag verlangt {least}.</translation>
    </message>
    <message>
        <source>Are there more readings that were not copied into the table?</source>
        <translation>Gibt es noch Messwerte, die nicht in die Tabelle übertragen sind?</translation>
    </message>
    <message>
        <source>Was each timing repeated, and only the mean written down?</source>
        <translation>Wurde jede Zeitmessung wiederholt und nur der Mittelwert aufgeschrieben?</translation>
    </message>
    <message>
        <source>What kept the lengths from being spread further?</source>
        <translation>Was hat verhindert, die Längen weiter auseinander zu wählen?</translation>
    </message>
    <message>
        <source>How were the lengths chosen?</source>
        <translation>Wie wurden die Längen gewählt?</translation>
    </message>
    <message>
        <source>{lengths}: outside the range {shortest} to {longest} that the brief calls sensible.</source>
        <translation>{lengths}: außerhalb des Bereichs von {shortest} bis {longest}, den der Auftrag sinnvoll nennt.</translation>
    </message>
    <message>
        <source>{lengths}: longer than the support is high ({height}).</source>
        <translation>{lengths}: länger, als die Aufhängung hoch ist ({height}).</translation>
    </message>
    <message>
        <source>How many complete swings, there and back, were in one timing?</source>
        <translation>Wie viele volle Schwingungen, hin und zurück, waren in einer Zeitmessung?</translation>
    </message>
    <message>
        <source>In which unit were the lengths measured, and from where to where?</source>
        <translation>In welcher Einheit wurden die Längen gemessen, und von wo bis wo?</translation>
    </message>
    <message>
        <source>Which support was used for these lengths?</source>
        <translation>Welche Aufhängung wurde für diese Längen benutzt?</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>The swings in the video speak for it.</source>
        <translation>Die Schwingungen im Video sprechen dafür.</translation>
    </message>
    <message>
        <source>inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>metres</source>
        <translation>Meter</translation>
    </message>
    <message>
        <source>millimetres</source>
        <translation>Millimeter</translation>
    </message>
    <message>
        <source>centimetres (read as metres)</source>
        <translation>Zentimeter (als Meter gelesen)</translation>
    </message>
    <message>
        <source>centimetres (read as millimetres)</source>
        <translation>Zentimeter (als Millimeter gelesen)</translation>
    </message>
    <message>
        <source>the first timing</source>
        <translation>die erste Zeit</translation>
    </message>
    <message>
        <source>the second timing</source>
        <translation>die zweite Zeit</translation>
    </message>
    <message>
        <source>the third timing</source>
        <translation>die dritte Zeit</translation>
    </message>
    <message>
        <source>the fourth timing</source>
        <translation>die vierte Zeit</translation>
    </message>
    <message>
        <source>the fifth timing</source>
        <translation>die fünfte Zeit</translation>
    </message>
    <message>
        <source>the sixth timing</source>
        <translation>die sechste Zeit</translation>
    </message>
    <message>
        <source>Ordinary scatter explains these readings: g = {g}.</source>
        <translation>Gewöhnliche Streuung erklärt diese Messwerte: g = {g}.</translation>
    </message>
    <message>
        <source>Two things together would explain these readings: {one}, and {other}. With both, g becomes {g_mended} instead of {g_before}.</source>
        <translation>Zwei Dinge zusammen würden diese Messwerte erklären: {one} und {other}. Mit beiden wird g {g_mended} statt {g_before}.</translation>
    </message>
    <message>
        <source>These readings cannot tell “{one}” from “{other}”.</source>
        <translation>Diese Messwerte können „{one}“ und „{other}“ nicht unterscheiden.</translation>
    </message>
    <message>
        <source>the length {length}</source>
        <translation>die Länge {length}</translation>
    </message>
    <message>
        <source>{timing} at {length}</source>
        <translation>{timing} bei {length}</translation>
    </message>
    <message>
        <source>the length of row {row}</source>
        <translation>die Länge in Zeile {row}</translation>
    </message>
    <message>
        <source>ordinary scatter</source>
        <translation>gewöhnliche Streuung</translation>
    </message>
    <message>
        <source>the {n}th timing</source>
        <translation>die {n}. Zeit</translation>
    </message>
    <message>
        <source>1:05.3 typed as 105.3</source>
        <translation>1:05,3 als 105,3 getippt</translation>
    </message>
    <message>
        <source>1:05.3 typed as 1.053</source>
        <translation>1:05,3 als 1,053 getippt</translation>
    </message>
    <message>
        <source>0:14:23 taken for 14 min 23 s</source>
        <translation>0:14:23 als 14 min 23 s gelesen</translation>
    </message>
    <message>
        <source>0:14:2 taken for 14 min 2 s</source>
        <translation>0:14:2 als 14 min 2 s gelesen</translation>
    </message>
    <message>
        <source>Two lengths with a time each are the least that explanations can be weighed on.</source>
        <translation>Um Erklärungen abzuwägen, braucht es mindestens zwei Längen mit je einer Zeit.</translation>
    </message>
    <message>
        <source>Inventions rougher than 0.05 s cannot be told from careful hands.</source>
        <translation>Erfundene Zeiten, die um mehr als 0,05 s streuen, lassen sich von sorgfältig gestoppten nicht unterscheiden.</translation>
    </message>
    <message>
        <source>With one timing to a length, repeats cannot be compared.</source>
        <translation>Mit nur einer Zeit je Länge lassen sich keine Wiederholungen vergleichen.</translation>
    </message>
    <message>
        <source>Times to a tenth of a second hide whether repeats are closer than a hand can repeat.</source>
        <translation>Zeiten auf Zehntelsekunden verbergen, ob Wiederholungen enger liegen, als eine Hand wiederholen kann.</translation>
    </message>
    <message>
        <source>The difference is {times:.1f} times its uncertainty.</source>
        <translation>Der Unterschied ist das {times:.1f}-Fache seiner Unsicherheit.</translation>
    </message>
    <message>
        <source>{time:.2f} s for {swings} swings at {length}, where the local law gives {law:.2f} s: further than timing and length reading explain.</source>
        <translation>{time:.2f} s für {swings} Schwingungen bei {length}, wo das Pendelgesetz mit dem örtlichen g {law:.2f} s ergibt: weiter daneben, als Stoppen und Ablesen der Länge erklären.</translation>
    </message>
    <message>
        <source>The difference is more than ten times its uncertainty.</source>
        <translation>Der Unterschied ist mehr als das Zehnfache seiner Unsicherheit.</translation>
    </message>
    <message>
        <source>{n} of {of} timings are that far off.</source>
        <translation>So weit daneben liegen {n} von {of} Zeiten.</translation>
    </message>
    <message>
        <source>The point at {length} lies {away} s² off the line of the others in T² (studentised residual {studentised}).</source>
        <translation>Der Punkt bei {length} liegt in T² um {away} s² neben der Geraden durch die übrigen (studentisiertes Residuum {studentised}).</translation>
    </message>
    <message>
        <source>The line of T² against L misses the origin by {intercept}, as if every length were {shift:.1f} cm too short.</source>
        <translation>Die Gerade von T² über L geht um {intercept} am Ursprung vorbei, als wäre jede Länge um {shift:.1f} cm zu kurz.</translation>
    </message>
    <message>
        <source>The line of T² against L misses the origin by {intercept}, as if every length were {shift:.1f} cm too long.</source>
        <translation>Die Gerade von T² über L geht um {intercept} am Ursprung vorbei, als wäre jede Länge um {shift:.1f} cm zu lang.</translation>
    </message>
    <message>
        <source>Which step between the readings and g could have gone another way?</source>
        <translation>Welcher Schritt von den Messwerten zu g könnte anders gegangen sein?</translation>
    </message>
    <message>
        <source>At {length} one timing is {difference:.2f} s from its repeat ({timings}); the usual scatter of these timings is about {scatter:.2f} s.</source>
        <translation>Bei {length} liegt eine Zeit {difference:.2f} s neben ihrer Wiederholung ({timings}); üblich ist bei diesen Zeiten eine Streuung von etwa {scatter:.2f} s.</translation>
    </message>
    <message>
        <source>Can this length be measured and timed once more?</source>
        <translation>Lassen sich diese Länge und ihre Zeit noch einmal messen?</translation>
    </message>
    <message>
        <source>To which point of the bob was the length measured?</source>
        <translation>Bis zu welcher Stelle des Pendelkörpers wurde die Länge gemessen?</translation>
    </message>
    <message>
        <source>How were the swings counted, and from where to where was the length measured?</source>
        <translation>Wie wurden die Schwingungen gezählt, und von wo bis wo wurde die Länge gemessen?</translation>
    </message>
    <message>
        <source>Did both timings run over the same number of swings?</source>
        <translation>Gingen beide Zeitmessungen über gleich viele Schwingungen?</translation>
    </message>
    <message>
        <source>photo of the set-up</source>
        <translation>Foto vom Aufbau</translation>
    </message>
    <message>
        <source>photo of the learner with the set-up</source>
        <translation>Foto der Person mit dem Aufbau</translation>
    </message>
    <message>
        <source>video of the swings</source>
        <translation>Video der Schwingungen</translation>
    </message>
    <message>
        <source>table of readings</source>
        <translation>Messwerttabelle</translation>
    </message>
    <message>
        <source>written report</source>
        <translation>schriftlicher Bericht</translation>
    </message>
    <message>
        <source>{n} day</source>
        <translation>{n} Tag</translation>
    </message>
    <message>
        <source>{n} days</source>
        <translation>{n} Tage</translation>
    </message>
    <message>
        <source>The {name} is missing.</source>
        <translation>Es fehlt: {name}.</translation>
    </message>
    <message>
        <source>No table of readings could be read, or none was handed in.</source>
        <translation>Es ließ sich keine Messwerttabelle lesen, oder es wurde keine abgegeben.</translation>
    </message>
    <message>
        <source>Please hand in the {name}.</source>
        <translation>Bitte noch abgeben: {name}.</translation>
    </message>
    <message>
        <source>Was there a reason for the later hand-in? Copying can change a file&apos;s date.</source>
        <translation>Gab es einen Grund für die spätere Abgabe? Beim Kopieren kann sich das Datum einer Datei ändern.</translation>
    </message>
    <message>
        <source>Is the clock of the phone or computer set right?</source>
        <translation>Geht die Uhr des Telefons oder Rechners richtig?</translation>
    </message>
    <message>
        <source>{most} and {last}</source>
        <translation>{most} und {last}</translation>
    </message>
    <message>
        <source>mean time</source>
        <translation>die mittlere Zeit</translation>
    </message>
    <message>
        <source>{told}; {n} more like it</source>
        <translation>{told}; {n} weitere dieser Art</translation>
    </message>
    <message>
        <source>{word} at {length}</source>
        <translation>{word} bei {length}</translation>
    </message>
    <message>
        <source>{what} is written as {own:g} {unit} and comes out as {expected:.4g} {unit} ({source})</source>
        <translation>{what} steht als {own:g} {unit} da und ergibt {expected:.4g} {unit} ({source})</translation>
    </message>
    <message>
        <source>Worked out again from the raw readings, {told}.</source>
        <translation>Aus den Messwerten nachgerechnet: {told}.</translation>
    </message>
    <message>
        <source>Times are written to {counts} decimals in one table; {n} of {of} have fewer than {most}.</source>
        <translation>Zeiten stehen in einer Tabelle mit {counts} Nachkommastellen; {n} von {of} haben weniger als {most}.</translation>
    </message>
    <message>
        <source>No unit in the heading {headings}.</source>
        <translation>Keine Einheit im Spaltenkopf {headings}.</translation>
    </message>
    <message>
        <source>No unit in the headings {headings}.</source>
        <translation>Keine Einheit in den Spaltenköpfen {headings}.</translation>
    </message>
    <message>
        <source>No unit in the headings {headings} and others.</source>
        <translation>Keine Einheit in den Spaltenköpfen {headings} und weiteren.</translation>
    </message>
    <message>
        <source>Show the working for one of these values.</source>
        <translation>Bitte für einen dieser Werte den Rechenweg zeigen.</translation>
    </message>
    <message>
        <source>How finely did the stopwatch read?</source>
        <translation>Wie fein hat die Stoppuhr angezeigt?</translation>
    </message>
    <message>
        <source>Write each heading as quantity / unit.</source>
        <translation>Jeden Spaltenkopf als Größe / Einheit schreiben.</translation>
    </message>
    <message>
        <source>“{text}” ({cell})</source>
        <translation>„{text}“ ({cell})</translation>
    </message>
    <message>
        <source>By the phone&apos;s clock the photo was taken on {day:%d %B %Y}, {days} before the days of the brief. Phone clocks are often wrong.</source>
        <translation>Nach der Uhr des Telefons entstand das Foto am {day:%d %B %Y}, {days} vor den Tagen des Auftrags. Uhren von Telefonen gehen oft falsch.</translation>
    </message>
    <message>
        <source>By the phone&apos;s clock the photo was taken on {day:%d %B %Y}, {days} after the days of the brief. Phone clocks are often wrong.</source>
        <translation>Nach der Uhr des Telefons entstand das Foto am {day:%d %B %Y}, {days} nach den Tagen des Auftrags. Uhren von Telefonen gehen oft falsch.</translation>
    </message>
    <message>
        <source>another piece of the same learner</source>
        <translation>ein anderes Stück derselben Person</translation>
    </message>
    <message>
        <source>a piece of {learner}</source>
        <translation>ein Stück von {learner}</translation>
    </message>
    <message>
        <source>The photo could not be opened: {why}.</source>
        <translation>Das Foto ließ sich nicht öffnen: {why}.</translation>
    </message>
    <message>
        <source>The photo has only {width} × {height} pixels; details cannot be made out.</source>
        <translation>Das Foto hat nur {width} × {height} Pixel; Einzelheiten sind nicht zu erkennen.</translation>
    </message>
    <message>
        <source>The photo shows an even surface: all of it lies within {spread:.0f} of 255 grey levels.</source>
        <translation>Das Foto zeigt eine gleichmäßige Fläche: Alles liegt innerhalb von {spread:.0f} der 255 Graustufen.</translation>
    </message>
    <message>
        <source>When did you take this photo?</source>
        <translation>Wann hast du dieses Foto gemacht?</translation>
    </message>
    <message>
        <source>Could you hand in this photo again?</source>
        <translation>Kannst du dieses Foto noch einmal abgeben?</translation>
    </message>
    <message>
        <source>Could you hand in the photo in its full size?</source>
        <translation>Kannst du das Foto in voller Größe abgeben?</translation>
    </message>
    <message>
        <source>Could you look whether this is the photo you meant?</source>
        <translation>Kannst du nachsehen, ob dies das gemeinte Foto ist?</translation>
    </message>
    <message>
        <source>The photo looks blurred: its clearest edges measure {sharpness:.3f} where {asked:.3f} is asked for.</source>
        <translation>Das Foto sieht unscharf aus: Seine schärfsten Kanten erreichen {sharpness:.3f}, nötig sind {asked:.3f}.</translation>
    </message>
    <message>
        <source>The photo shows the same picture as {whose} ({file}).</source>
        <translation>Das Foto zeigt dasselbe Bild wie {whose} ({file}).</translation>
    </message>
    <message>
        <source>Could you take this photo again with the camera held still?</source>
        <translation>Kannst du dieses Foto noch einmal mit ruhiger Hand machen?</translation>
    </message>
    <message>
        <source>Could you say how this photo was taken, and by whom?</source>
        <translation>Kannst du sagen, wie und von wem dieses Foto gemacht wurde?</translation>
    </message>
    <message>
        <source>as when each passage, there or back, was counted as a swing</source>
        <translation>wie wenn jeder Durchgang, hin oder her, als Schwingung gezählt wurde</translation>
    </message>
    <message>
        <source>as when one swing fewer went by than was written</source>
        <translation>wie wenn es eine Schwingung weniger war als notiert</translation>
    </message>
    <message>
        <source>as when one swing more went by than was written</source>
        <translation>wie wenn es eine Schwingung mehr war als notiert</translation>
    </message>
    <message>
        <source>and no half swing or miscount by one would bring them together</source>
        <translation>und weder eine halbe Schwingung noch ein Verzählen um eins brächte sie zusammen</translation>
    </message>
    <message>
        <source>The video could not be opened: {why}.</source>
        <translation>Das Video ließ sich nicht öffnen: {why}.</translation>
    </message>
    <message>
        <source>The swing could not be measured from the video: {why}.</source>
        <translation>Die Schwingung ließ sich aus dem Video nicht messen: {why}.</translation>
    </message>
    <message>
        <source>The video shows {n} complete swings; the brief asks for {wanted}.</source>
        <translation>Das Video zeigt {n} volle Schwingungen; der Auftrag verlangt {wanted}.</translation>
    </message>
    <message>
        <source>In the video one swing takes {filmed:.3f} s. No period in the table agrees; at {length:.3g} cm it is {period:.3f} s, and the video&apos;s is {ratio:.3f} ± {u_ratio:.3f} of it, {slip}.</source>
        <translation>Im Video dauert eine Schwingung {filmed:.3f} s. Keine Schwingungsdauer der Tabelle passt dazu; bei {length:.3g} cm sind es {period:.3f} s, und die im Video ist das {ratio:.3f} ± {u_ratio:.3f}-Fache davon, {slip}.</translation>
    </message>
    <message>
        <source>Could you hand in this video again?</source>
        <translation>Kannst du dieses Video noch einmal abgeben?</translation>
    </message>
    <message>
        <source>Could you film {n} complete swings?</source>
        <translation>Kannst du {n} volle Schwingungen filmen?</translation>
    </message>
    <message>
        <source>How did you count the swings, and which length does the video show?</source>
        <translation>Wie hast du die Schwingungen gezählt, und welche Länge zeigt das Video?</translation>
    </message>
    <message>
        <source>fewer than three complete swings were seen, too few to measure a period</source>
        <translation>weniger als drei volle Schwingungen waren zu sehen, zu wenige für eine Schwingungsdauer</translation>
    </message>
    <message>
        <source>something swings, but not steadily enough for its period to be trusted</source>
        <translation>etwas schwingt, aber zu ungleichmäßig für eine verlässliche Schwingungsdauer</translation>
    </message>
    <message>
        <source>{file} could not be written: {reason}.</source>
        <translation>{file} ließ sich nicht schreiben: {reason}.</translation>
    </message>
    <message>
        <source>{file} could not be written: {why}.</source>
        <translation>{file} ließ sich nicht schreiben: {why}.</translation>
    </message>
    <message>
        <source>{file} is a file that was handed in; choose another name to export to.</source>
        <translation>{file} ist eine abgegebene Datei; bitte für die Ausgabe einen anderen Namen wählen.</translation>
    </message>
    <message>
        <source>{file} cannot be written: it is open in another program or its folder is read-only. Close it there and export again.</source>
        <translation>{file} lässt sich nicht schreiben: Die Datei ist in einem anderen Programm offen, oder ihr Ordner ist schreibgeschützt. Bitte dort schließen und noch einmal ausgeben.</translation>
    </message>
    <message>
        <source>There is no folder {folder} to write {name} in.</source>
        <translation>Es gibt keinen Ordner {folder}, in den {name} geschrieben werden könnte.</translation>
    </message>
    <message>
        <source>The longest length is to reach {ratio:g} times the shortest.</source>
        <translation>Die größte Länge soll das {ratio:g}-Fache der kleinsten erreichen.</translation>
    </message>
    <message>
        <source>Not after the last day.</source>
        <translation>Nicht nach dem letzten Tag.</translation>
    </message>
    <message>
        <source>Not before the first day.</source>
        <translation>Nicht vor dem ersten Tag.</translation>
    </message>
    <message>
        <source>Not before the last day for handing in.</source>
        <translation>Nicht vor dem letzten Abgabetag.</translation>
    </message>
    <message>
        <source>Less than the longest length.</source>
        <translation>Kleiner als die größte Länge.</translation>
    </message>
    <message>
        <source>More than the shortest length.</source>
        <translation>Größer als die kleinste Länge.</translation>
    </message>
    <message>
        <source>At most {ratio:.3g}, with these lengths.</source>
        <translation>Höchstens {ratio:.3g}, bei diesen Längen.</translation>
    </message>
    <message>
        <source>Some words are needed, 200 letters at most.</source>
        <translation>Ein paar Wörter sind nötig, höchstens 200 Zeichen.</translation>
    </message>
    <message>
        <source>A whole number from {low} to {high}.</source>
        <translation>Eine ganze Zahl von {low} bis {high}.</translation>
    </message>
    <message>
        <source>A number from {low:g} to {high:g}.</source>
        <translation>Eine Zahl von {low:g} bis {high:g}.</translation>
    </message>
    <message>
        <source>A date, as 2026-03-31.</source>
        <translation>Ein Datum, etwa 2026-03-31.</translation>
    </message>
    <message>
        <source>Whole numbers from 1 to 200, as 10, 20.</source>
        <translation>Ganze Zahlen von 1 bis 200, etwa 10, 20.</translation>
    </message>
    <message>
        <source>Any of these.</source>
        <translation>Beliebige von diesen.</translation>
    </message>
    <message>
        <source>A language.</source>
        <translation>Eine Sprache.</translation>
    </message>
    <message>
        <source>Two ids with &amp; between them, as 07 &amp; 12; a comma before the next pair.</source>
        <translation>Zwei Kennungen mit &amp; dazwischen, etwa 07 &amp; 12; vor dem nächsten Paar ein Komma.</translation>
    </message>
    <message>
        <source>Yes or no.</source>
        <translation>Ja oder nein.</translation>
    </message>
    <message>
        <source>Grades with their least marks, as A = 16, B = 13; no two with the same.</source>
        <translation>Noten mit ihrer kleinsten Punktzahl, etwa A = 16, B = 13; keine zwei mit derselben.</translation>
    </message>
    <message>
        <source>A share from 0.1 % to 50 %.</source>
        <translation>Ein Anteil von 0,1 % bis 50 %.</translation>
    </message>
    <message>
        <source>A share from 0.01 % to 50 %.</source>
        <translation>Ein Anteil von 0,01 % bis 50 %.</translation>
    </message>
    <message>
        <source>One in so many, from 1 in 10 to 1 in 10000.</source>
        <translation>Eine von so vielen, von 1 von 10 bis 1 von 10000.</translation>
    </message>
    <message>
        <source>No heading of a class list was found in {file}; one row should name the columns, as “id, name, group”.</source>
        <translation>In {file} ist kein Kopf einer Klassenliste zu finden; eine Zeile sollte die Spalten nennen, etwa „id, name, group“.</translation>
    </message>
    <message>
        <source>There is more than one class list ({names}); {file} is used.</source>
        <translation>Es gibt mehr als eine Klassenliste ({names}); benutzt wird {file}.</translation>
    </message>
    <message>
        <source>Several files look like a class list ({names}); {file}, the longest, is used.</source>
        <translation>Mehrere Dateien sehen wie eine Klassenliste aus ({names}); benutzt wird die längste, {file}.</translation>
    </message>
    <message>
        <source>{name} has no id in the class list; the name serves as id.</source>
        <translation>{name} hat in der Klassenliste keine Kennung; der Name dient als Kennung.</translation>
    </message>
    <message>
        <source>Two rows of the class list have the id {id}: {one} and {other}. {other} is called {own} here until the list is put right.</source>
        <translation>Zwei Zeilen der Klassenliste haben die Kennung {id}: {one} und {other}. {other} heißt hier {own}, bis die Liste berichtigt ist.</translation>
    </message>
    <message>
        <source>{n} learners are called {name} ({ids}); their files can be told apart by id alone.</source>
        <translation>{n} Lernende heißen {name} ({ids}); ihre Dateien lassen sich nur an der Kennung unterscheiden.</translation>
    </message>
    <message>
        <source>The partner “{partner}” of {id} is not clear from the class list.</source>
        <translation>Wer „{partner}“ ist, angegeben bei {id}, geht aus der Klassenliste nicht klar hervor.</translation>
    </message>
    <message>
        <source>{one} names {other} as partner, and {other} names {back}; is it a group of three?</source>
        <translation>{one} nennt {other} für die Zusammenarbeit, und {other} nennt {back}; ist es eine Dreiergruppe?</translation>
    </message>
    <message>
        <source>The class list {file} could not be read: {why}.</source>
        <translation>Die Klassenliste {file} ließ sich nicht lesen: {why}.</translation>
    </message>
    <message>
        <source>{name} ({id}) stands twice in the class list.</source>
        <translation>{name} ({id}) steht zweimal in der Klassenliste.</translation>
    </message>
    <message>
        <source>Id {id} has no name in the class list.</source>
        <translation>Die Kennung {id} hat in der Klassenliste keinen Namen.</translation>
    </message>
    <message>
        <source>{place} of the class list has no name.</source>
        <translation>{place} der Klassenliste hat keinen Namen.</translation>
    </message>
    <message>
        <source>The second row is left out.</source>
        <translation>Die zweite Zeile bleibt weg.</translation>
    </message>
    <message>
        <source>{n} swings</source>
        <translation>{n} Schwingungen</translation>
    </message>
    <message>
        <source>no reading belongs to this cell; type the readings in instead.</source>
        <translation>zu dieser Zelle gehört kein Messwert; bitte stattdessen die Messwerte eintippen.</translation>
    </message>
    <message>
        <source>{meaning}, corrected by the teacher to “{text}”</source>
        <translation>{meaning}, von der Lehrkraft berichtigt zu „{text}“</translation>
    </message>
    <message>
        <source>“{text}” cannot be read ({why}).</source>
        <translation>„{text}“ lässt sich nicht lesen ({why}).</translation>
    </message>
    <message>
        <source>“{text}” must be above 0.</source>
        <translation>„{text}“ muss über 0 liegen.</translation>
    </message>
    <message>
        <source>“{text}” is not a whole number of swings.</source>
        <translation>„{text}“ ist keine ganze Zahl von Schwingungen.</translation>
    </message>
    <message>
        <source>“{text}” is not a length.</source>
        <translation>„{text}“ ist keine Länge.</translation>
    </message>
    <message>
        <source>“{text}” is not a time.</source>
        <translation>„{text}“ ist keine Zeit.</translation>
    </message>
    <message>
        <source>it is empty</source>
        <translation>sie ist leer</translation>
    </message>
    <message>
        <source>partners in the brief names {name}, who is not in the class list.</source>
        <translation>Die Paare im Auftrag nennen {name}, aber nicht die Klassenliste.</translation>
    </message>
    <message>
        <source>readings table</source>
        <translation>Messwerttabelle</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>swing video</source>
        <translation>Schwingungsvideo</translation>
    </message>
    <message>
        <source>report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>file</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>The same {what} was handed in twice, as {earlier} and {later}.</source>
        <translation>Zweimal dasselbe abgegeben ({what}): als {earlier} und {later}.</translation>
    </message>
    <message>
        <source>A later {what} was handed in: {later} is used in place of {earlier}, which is kept.</source>
        <translation>Später noch einmal abgegeben ({what}): Statt {earlier} gilt {later}; das Frühere bleibt aufbewahrt.</translation>
    </message>
    <message>
        <source>{one} and {other} both hold readings, and nothing tells which is the later; {one} is used.</source>
        <translation>{one} und {other} enthalten beide Messwerte, und nichts sagt, was später ist; benutzt wird {one}.</translation>
    </message>
    <message>
        <source>Which of your two tables should count?</source>
        <translation>Welche deiner beiden Tabellen soll zählen?</translation>
    </message>
    <message>
        <source>{file} was given to {name}, who is not in the class list; it was matched anew.</source>
        <translation>{file} war {name} zugeordnet, wofür die Klassenliste niemanden kennt; die Datei wurde neu zugeordnet.</translation>
    </message>
    <message>
        <source>Reading was stopped; the portfolios of {n} learners were not read.</source>
        <translation>Das Lesen wurde angehalten; die Abgaben von {n} Lernenden sind nicht gelesen.</translation>
    </message>
    <message>
        <source>{file} opens only in the program that made it; a copy saved as .xlsx or .csv can be read.</source>
        <translation>{file} öffnet sich nur in dem Programm, mit dem die Datei gemacht ist; eine als .xlsx oder .csv gespeicherte Kopie lässt sich lesen.</translation>
    </message>
    <message>
        <source>{file} is empty (0 bytes).</source>
        <translation>{file} ist leer (0 Bytes).</translation>
    </message>
    <message>
        <source>Could you hand this file in again?</source>
        <translation>Kannst du diese Datei noch einmal abgeben?</translation>
    </message>
    <message>
        <source>{file} could not be read ({error}).</source>
        <translation>{file} ließ sich nicht lesen ({error}).</translation>
    </message>
    <message>
        <source>A correction was not used: {why}</source>
        <translation>Eine Berichtigung wurde nicht benutzt: {why}</translation>
    </message>
    <message>
        <source>a length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>a timing</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>an own value</source>
        <translation>eigener Wert</translation>
    </message>
    <message>
        <source>it holds more than one number</source>
        <translation>sie enthält mehr als eine Zahl</translation>
    </message>
    <message>
        <source>{place} (and {cells})</source>
        <translation>{place} (und {cells})</translation>
    </message>
    <message>
        <source>it is not above zero</source>
        <translation>der Wert liegt nicht über null</translation>
    </message>
    <message>
        <source>{table}: what begins at {cells} holds the sums or means of the readings above and was not taken for readings.</source>
        <translation>{table}: Was bei {cells} beginnt, sind Summen oder Mittelwerte der Messwerte darüber; es zählt nicht als Messwerte.</translation>
    </message>
    <message>
        <source>{place}: no timing stands beside the length.</source>
        <translation>{place}: Neben der Länge steht keine Zeit.</translation>
    </message>
    <message>
        <source>it is not a whole number from 1 to {most}</source>
        <translation>es ist keine ganze Zahl von 1 bis {most}</translation>
    </message>
    <message>
        <source>a number of swings</source>
        <translation>Anzahl der Schwingungen</translation>
    </message>
    <message>
        <source>the file holds the formula but not its result; opening and saving it in a spreadsheet program stores the result</source>
        <translation>die Datei enthält die Formel, aber nicht ihr Ergebnis; beim Öffnen und Speichern in einem Tabellenprogramm kommt es hinein</translation>
    </message>
    <message>
        <source>the spreadsheet shows the error {shown}</source>
        <translation>die Tabelle zeigt den Fehler {shown}</translation>
    </message>
    <message>
        <source>taken as a sum or mean</source>
        <translation>als Summe oder Mittelwert gelesen</translation>
    </message>
    <message>
        <source>a length without a timing</source>
        <translation>eine Länge ohne Zeit</translation>
    </message>
    <message>
        <source>the learner this row belongs to</source>
        <translation>die Person, zu der diese Zeile gehört</translation>
    </message>
    <message>
        <source>{place}: no readings stand in the row of {name}.</source>
        <translation>{place}: In der Zeile von {name} stehen keine Messwerte.</translation>
    </message>
    <message>
        <source>there is none beside its times</source>
        <translation>neben ihren Zeiten steht keine</translation>
    </message>
    <message>
        <source>the learner&apos;s own final g</source>
        <translation>das eigene Endergebnis für g</translation>
    </message>
    <message>
        <source>{table}: the row {titles} was taken as {what}.</source>
        <translation>{table}: Die Zeile {titles} wurde so gelesen: {what}.</translation>
    </message>
    <message>
        <source>{table}: the rows {titles} were taken as {what}.</source>
        <translation>{table}: Die Zeilen {titles} wurden so gelesen: {what}.</translation>
    </message>
    <message>
        <source>{table}: the column {titles} was taken as {what}.</source>
        <translation>{table}: Die Spalte {titles} wurde so gelesen: {what}.</translation>
    </message>
    <message>
        <source>{table}: the columns {titles} were taken as {what}.</source>
        <translation>{table}: Die Spalten {titles} wurden so gelesen: {what}.</translation>
    </message>
    <message>
        <source>What does this column hold?</source>
        <translation>Was steht in dieser Spalte?</translation>
    </message>
    <message>
        <source>{table}: the table gives only the period T and no times from the stopwatch; each T was taken as a timing of one swing.</source>
        <translation>{table}: Die Tabelle gibt nur die Schwingungsdauer T und keine Zeiten der Stoppuhr; jedes T wurde als Zeit einer Schwingung gelesen.</translation>
    </message>
    <message>
        <source>What were the times on the stopwatch, and for how many swings?</source>
        <translation>Welche Zeiten hat die Stoppuhr gezeigt, und für wie viele Schwingungen?</translation>
    </message>
    <message>
        <source>timings</source>
        <translation>Zeiten</translation>
    </message>
    <message>
        <source>periods T</source>
        <translation>Schwingungsdauern T</translation>
    </message>
    <message>
        <source>timings, because only means are given and no single times</source>
        <translation>Zeiten, da nur Mittelwerte und keine einzelnen Zeiten dastehen</translation>
    </message>
    <message>
        <source>What were the single times on the stopwatch?</source>
        <translation>Welche einzelnen Zeiten hat die Stoppuhr gezeigt?</translation>
    </message>
    <message>
        <source>times of several swings, though headed T</source>
        <translation>Zeiten mehrerer Schwingungen, obwohl T darüber steht</translation>
    </message>
    <message>
        <source>Is this the time of one swing, or of all swings timed?</source>
        <translation>Ist das die Zeit einer Schwingung oder aller gestoppten?</translation>
    </message>
    <message>
        <source>taken as {what}</source>
        <translation>gelesen als {what}</translation>
    </message>
    <message>
        <source>own means</source>
        <translation>eigene Mittelwerte</translation>
    </message>
    <message>
        <source>the learner&apos;s own means</source>
        <translation>die eigenen Mittelwerte</translation>
    </message>
    <message>
        <source>the learner&apos;s own T</source>
        <translation>das eigene T</translation>
    </message>
    <message>
        <source>taken as the time of one swing</source>
        <translation>als Zeit einer Schwingung gelesen</translation>
    </message>
    <message>
        <source>further timings</source>
        <translation>weitere Zeiten</translation>
    </message>
    <message>
        <source>something else than readings, and not used</source>
        <translation>etwas anderes als Messwerte, nicht benutzt</translation>
    </message>
    <message>
        <source>centimetres</source>
        <translation>Zentimeter</translation>
    </message>
    <message>
        <source>seconds</source>
        <translation>Sekunden</translation>
    </message>
    <message>
        <source>minutes and seconds</source>
        <translation>Minuten und Sekunden</translation>
    </message>
    <message>
        <source>minutes, seconds and hundredths</source>
        <translation>Minuten, Sekunden und Hundertstel</translation>
    </message>
    <message>
        <source>hours, minutes and seconds</source>
        <translation>Stunden, Minuten und Sekunden</translation>
    </message>
    <message>
        <source>seconds and hundredths</source>
        <translation>Sekunden und Hundertstel</translation>
    </message>
    <message>
        <source>a number that the spreadsheet made into a month and a year</source>
        <translation>eine Zahl, die das Tabellenprogramm zu Monat und Jahr gemacht hat</translation>
    </message>
    <message>
        <source>a number that the spreadsheet made into a day and a month</source>
        <translation>eine Zahl, die das Tabellenprogramm zu Tag und Monat gemacht hat</translation>
    </message>
    <message>
        <source>{table}: the number of swings in one timing is not given; {n} was taken from the brief.</source>
        <translation>{table}: Die Zahl der Schwingungen je Zeitmessung steht nicht da; {n} wurde aus dem Auftrag genommen.</translation>
    </message>
    <message>
        <source>{table}: the “{mark}” in {text} was taken as parting thousands, since the times have “{other}” before their decimals.</source>
        <translation>{table}: Das „{mark}“ in {text} wurde als Tausendertrennung gelesen, da in den Zeiten „{other}“ vor den Dezimalen steht.</translation>
    </message>
    <message>
        <source>Does {text} mean {number:g}?</source>
        <translation>Bedeutet {text} die Zahl {number:g}?</translation>
    </message>
    <message>
        <source>{table}: no unit is given for the length; {low:g} to {high:g} was taken as {unit} (the times would then be of about {swings:.3g} swings each).</source>
        <translation>{table}: Für die Länge steht keine Einheit da; {low:g} bis {high:g} wurden als {unit} gelesen (die Zeiten wären dann von je etwa {swings:.3g} Schwingungen).</translation>
    </message>
    <message>
        <source>{table}: no unit is given for the length; {low:g} to {high:g} was taken as {unit}.</source>
        <translation>{table}: Für die Länge steht keine Einheit da; {low:g} bis {high:g} wurden als {unit} gelesen.</translation>
    </message>
    <message>
        <source>Which unit are the lengths in?</source>
        <translation>In welcher Einheit stehen die Längen da?</translation>
    </message>
    <message>
        <source>How many complete swings did you time at once?</source>
        <translation>Wie viele volle Schwingungen hast du auf einmal gestoppt?</translation>
    </message>
    <message>
        <source>{table}: the heading gives lengths in {unit}, but {text} names another unit; the cell&apos;s own unit was taken.</source>
        <translation>{table}: Der Spaltenkopf gibt Längen in {unit} an, aber {text} nennt eine andere Einheit; die Einheit der Zelle gilt.</translation>
    </message>
    <message>
        <source>{table}: {n} time written like {text} could be read in more than one way; taken as {form}, so {text} is {time:g} s.</source>
        <translation>{table}: {n} Zeit, geschrieben wie {text}, lässt sich verschieden lesen; gelesen als {form}, also ist {text} gleich {time:g} s.</translation>
    </message>
    <message>
        <source>{table}: {n} times written like {text} could be read in more than one way; taken as {form}, so {text} is {time:g} s.</source>
        <translation>{table}: {n} Zeiten, geschrieben wie {text}, lassen sich verschieden lesen; gelesen als {form}, also ist {text} gleich {time:g} s.</translation>
    </message>
    <message>
        <source>Does {text} mean {time:g} s?</source>
        <translation>Bedeutet {text} so viel wie {time:g} s?</translation>
    </message>
    <message>
        <source>The times would fit {n} better.</source>
        <translation>Die Zeiten würden besser zu {n} passen.</translation>
    </message>
    <message>
        <source>{n} swings, from the brief</source>
        <translation>{n} Schwingungen, aus dem Auftrag</translation>
    </message>
    <message>
        <source>the cell&apos;s own unit taken</source>
        <translation>die Einheit der Zelle genommen</translation>
    </message>
    <message>
        <source>{table}: no unit is given for the times; they were taken as seconds.</source>
        <translation>{table}: Für die Zeiten steht keine Einheit da; sie wurden als Sekunden gelesen.</translation>
    </message>
    <message>
        <source>the reader of photos and videos did not start</source>
        <translation>das Lesen von Fotos und Videos ließ sich nicht starten</translation>
    </message>
    <message>
        <source>the video does not open or breaks off</source>
        <translation>das Video lässt sich nicht öffnen oder bricht ab</translation>
    </message>
    <message>
        <source>the file is not an MP4, MOV, 3GP, WebM or AVI video</source>
        <translation>die Datei ist kein Video in MP4, MOV, 3GP, WebM oder AVI</translation>
    </message>
    <message>
        <source>the video&apos;s pictures are of a kind that cannot be shown here</source>
        <translation>die Bilder des Videos sind von einer Art, die sich hier nicht zeigen lässt</translation>
    </message>
    <message>
        <source>the video&apos;s frames carry no times</source>
        <translation>die Einzelbilder des Videos tragen keine Zeiten</translation>
    </message>
    <message>
        <source>the video shows no moving picture</source>
        <translation>das Video zeigt kein bewegtes Bild</translation>
    </message>
    <message>
        <source>nothing in the video was seen to swing with a steady period</source>
        <translation>im Video war nichts zu sehen, was mit gleichbleibender Dauer schwingt</translation>
    </message>
    <message>
        <source>two things swing in the video, and it does not say which is the pendulum</source>
        <translation>im Video schwingen zwei Dinge, und es sagt nicht, welches das Pendel ist</translation>
    </message>
    <message>
        <source>the swing jumps in the middle, as where a video has been cut</source>
        <translation>die Schwingung springt in der Mitte, wie bei einem geschnittenen Video</translation>
    </message>
    <message>
        <source>not marked</source>
        <translation>nicht bewertet</translation>
    </message>
    <message>
        <source>no grade</source>
        <translation>keine Note</translation>
    </message>
    <message>
        <source>The record of the last export could not be read ({why}).</source>
        <translation>Das Verzeichnis der letzten Ausgabe ließ sich nicht lesen ({why}).</translation>
    </message>
    <message>
        <source>it is not of a form this version knows</source>
        <translation>es hat keine Form, die diese Version kennt</translation>
    </message>
    <message>
        <source>its list of learners is damaged</source>
        <translation>seine Liste der Lernenden ist beschädigt</translation>
    </message>
    <message>
        <source>not there</source>
        <translation>nicht vorhanden</translation>
    </message>
    <message>
        <source>in the class</source>
        <translation>in der Klasse</translation>
    </message>
    <message>
        <source>learner</source>
        <translation>Lernende</translation>
    </message>
    <message>
        <source>level</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>marks</source>
        <translation>Punkte</translation>
    </message>
    <message>
        <source>the earlier text</source>
        <translation>der frühere Text</translation>
    </message>
    <message>
        <source>a new text</source>
        <translation>ein neuer Text</translation>
    </message>
    <message>
        <source>total</source>
        <translation>Summe</translation>
    </message>
    <message>
        <source>grade</source>
        <translation>Note</translation>
    </message>
    <message>
        <source>feedback</source>
        <translation>Rückmeldung</translation>
    </message>
    <message>
        <source>“{criterion}”: {words}</source>
        <translation>„{criterion}“: {words}</translation>
    </message>
    <message>
        <source>{name}: {key} = {value} names no key that a brief has; {hint}</source>
        <translation>{name}: {key} = {value} nennt keinen Schlüssel, den ein Auftrag hat; {hint}</translation>
    </message>
    <message>
        <source>did you mean {guess} ({inner} under [{table}])?</source>
        <translation>gemeint {guess} ({inner} unter [{table}])?</translation>
    </message>
    <message>
        <source>{name}: {key} = {value} is not allowed; it must be {allowed}.</source>
        <translation>{name}: {key} = {value} ist nicht zulässig; zulässig ist {allowed}.</translation>
    </message>
    <message>
        <source>{name}: {given} does not fit; {allowed}. Until then the defaults are used.</source>
        <translation>{name}: {given} passt nicht; {allowed}. Bis dahin gelten die Vorgaben.</translation>
    </message>
    <message>
        <source>{name}: {given} do not fit; {allowed}. Until then the defaults are used.</source>
        <translation>{name}: {given} passen nicht; {allowed}. Bis dahin gelten die Vorgaben.</translation>
    </message>
    <message>
        <source>{name} could not be opened ({reason}).</source>
        <translation>{name} ließ sich nicht öffnen ({reason}).</translation>
    </message>
    <message>
        <source>{name} is not a readable brief: {error}. The defaults are used for every key; texts need quotation marks and decimals a point.</source>
        <translation>{name} ist als Auftrag nicht lesbar: {error}. Für jeden Schlüssel gelten die Vorgaben; Texte brauchen Anführungszeichen und Dezimalzahlen einen Punkt.</translation>
    </message>
    <message>
        <source>did you mean {guess}?</source>
        <translation>gemeint {guess}?</translation>
    </message>
    <message>
        <source>known keys: {keys}.</source>
        <translation>bekannte Schlüssel: {keys}.</translation>
    </message>
    <message>
        <source>Until then no value is used.</source>
        <translation>Bis dahin gilt kein Wert.</translation>
    </message>
    <message>
        <source>Until then the default {value} is used.</source>
        <translation>Bis dahin gilt die Vorgabe {value}.</translation>
    </message>
    <message>
        <source>opens must not be later than closes</source>
        <translation>opens darf nicht nach closes liegen</translation>
    </message>
    <message>
        <source>keep_evidence_until must not be earlier than closes</source>
        <translation>keep_evidence_until darf nicht vor closes liegen</translation>
    </message>
    <message>
        <source>shortest_m must be less than longest_m</source>
        <translation>shortest_m muss kleiner sein als longest_m</translation>
    </message>
    <message>
        <source>swings_allowed must contain swings_per_timing, which is {asked}</source>
        <translation>swings_allowed muss swings_per_timing enthalten, also {asked}</translation>
    </message>
    <message>
        <source>{name}: swings_allowed = {value} does not fit; {allowed}. It is added.</source>
        <translation>{name}: swings_allowed = {value} passt nicht; {allowed}. Der Wert wird ergänzt.</translation>
    </message>
    <message>
        <source>it is no file of its own</source>
        <translation>es ist keine eigene Datei</translation>
    </message>
    <message>
        <source>Not after the day until which photos and videos are kept.</source>
        <translation>Nicht nach dem Tag, bis zu dem Fotos und Videos aufbewahrt werden.</translation>
    </message>
    <message>
        <source>least_ratio must not exceed longest_m / shortest_m</source>
        <translation>least_ratio darf longest_m / shortest_m nicht übersteigen</translation>
    </message>
    <message>
        <source>For {item}, did you mean {near}?</source>
        <translation>Statt {item} gemeint {near}?</translation>
    </message>
    <message>
        <source>a number from {low} to {high}</source>
        <translation>eine Zahl von {low} bis {high}</translation>
    </message>
    <message>
        <source>a text of 1 to 200 characters</source>
        <translation>ein Text von 1 bis 200 Zeichen</translation>
    </message>
    <message>
        <source>a whole number from {low} to {high}</source>
        <translation>eine ganze Zahl von {low} bis {high}</translation>
    </message>
    <message>
        <source>a date written year-month-day, as 2026-03-20</source>
        <translation>ein Datum als Jahr-Monat-Tag, etwa 2026-03-20</translation>
    </message>
    <message>
        <source>a list of whole numbers from 1 to 200, as [10, 20]</source>
        <translation>eine Liste ganzer Zahlen von 1 bis 200, etwa [10, 20]</translation>
    </message>
    <message>
        <source>(metres)</source>
        <translation>(Meter)</translation>
    </message>
    <message>
        <source>a list of any of {kinds}</source>
        <translation>eine Liste aus {kinds}</translation>
    </message>
    <message>
        <source>the name of a rubric, as &quot;short&quot;, or of a .toml file in the class folder</source>
        <translation>der Name eines Rasters, etwa &quot;short&quot;, oder einer .toml-Datei im Klassenordner</translation>
    </message>
    <message>
        <source>a language code, as &quot;en&quot; or &quot;fr&quot;</source>
        <translation>ein Sprachkürzel, etwa &quot;en&quot; oder &quot;fr&quot;</translation>
    </message>
    <message>
        <source>a list of pairs of learner ids, as [[&quot;07&quot;, &quot;12&quot;]]</source>
        <translation>eine Liste von Paaren aus Kennungen, etwa [[&quot;07&quot;, &quot;12&quot;]]</translation>
    </message>
    <message>
        <source>grades with their least marks, no two the same, as {{ A = 16, B = 13 }}</source>
        <translation>Noten mit ihren Mindestpunkten, keine zwei gleich, etwa {{ A = 16, B = 13 }}</translation>
    </message>
    <message>
        <source>(degrees)</source>
        <translation>(Grad)</translation>
    </message>
    <message>
        <source>(seconds)</source>
        <translation>(Sekunden)</translation>
    </message>
    <message>
        <source>(0.05 is 5 %)</source>
        <translation>(0.05 sind 5 %)</translation>
    </message>
    <message>
        <source>(0.01 is 1 %)</source>
        <translation>(0.01 ist 1 %)</translation>
    </message>
    <message>
        <source>(0.005 is 1 in 200)</source>
        <translation>(0.005 ist 1 von 200)</translation>
    </message>
    <message>
        <source>{name} is not a readable brief: {error}</source>
        <translation>{name} ist als Auftrag nicht lesbar: {error}</translation>
    </message>
    <message>
        <source>headed {titles}</source>
        <translation>{titles}</translation>
    </message>
    <message>
        <source>from {cells} (no heading)</source>
        <translation>ab {cells} (ohne Kopf)</translation>
    </message>
    <message>
        <source>{table}: one length names no unit ({cells}); it was taken in {unit}, as others are.</source>
        <translation>{table}: Eine Länge nennt keine Einheit ({cells}); sie wurde wie andere in {unit} gelesen.</translation>
    </message>
    <message>
        <source>{table}: {n} of {of} lengths name no unit ({cells}); they were taken in {unit}, as others are.</source>
        <translation>{table}: {n} von {of} Längen nennen keine Einheit ({cells}); sie wurden wie andere in {unit} gelesen.</translation>
    </message>
    <message>
        <source>{table}: one time names no unit ({cells}); it was taken in {unit}, as others are.</source>
        <translation>{table}: Eine Zeit nennt keine Einheit ({cells}); sie wurde wie andere in {unit} gelesen.</translation>
    </message>
    <message>
        <source>{table}: {n} of {of} times name no unit ({cells}); they were taken in {unit}, as others are.</source>
        <translation>{table}: {n} von {of} Zeiten nennen keine Einheit ({cells}); sie wurden wie andere in {unit} gelesen.</translation>
    </message>
    <message>
        <source>Which unit are the times in?</source>
        <translation>In welcher Einheit stehen die Zeiten da?</translation>
    </message>
    <message>
        <source>not read as {what}: {why}</source>
        <translation>nicht gelesen als {what}: {why}</translation>
    </message>
    <message>
        <source>an empty cell</source>
        <translation>eine leere Zelle</translation>
    </message>
    <message>
        <source>{place}: {said} could not be read as {what}: {why}.</source>
        <translation>{place}: {said} ließ sich nicht als {what} lesen: {why}.</translation>
    </message>
    <message>
        <source>{table}: {cells} holds a dash or the like, taken as no reading.</source>
        <translation>{table}: In {cells} steht ein Strich oder Ähnliches; es zählt als kein Messwert.</translation>
    </message>
    <message>
        <source>{table}: {cells} hold a dash or the like, taken as no reading.</source>
        <translation>{table}: In {cells} steht je ein Strich oder Ähnliches; es zählt als kein Messwert.</translation>
    </message>
    <message>
        <source>taken as no reading</source>
        <translation>zählt als kein Messwert</translation>
    </message>
    <message>
        <source>repeats the same readings and was counted once</source>
        <translation>wiederholt dieselben Messwerte und zählt einmal</translation>
    </message>
    <message>
        <source>{table}: there are {n} tables of readings; the one at {cell} {what}.</source>
        <translation>{table}: Es gibt {n} Messwerttabellen; die bei {cell} {what}.</translation>
    </message>
    <message>
        <source>was taken as further timings of the same lengths</source>
        <translation>zählt als weitere Zeiten zu denselben Längen</translation>
    </message>
    <message>
        <source>holds other times for the same lengths and was left aside</source>
        <translation>enthält andere Zeiten zu denselben Längen und blieb beiseite</translation>
    </message>
    <message>
        <source>Which of the tables holds the readings to be marked?</source>
        <translation>In welcher Tabelle stehen die Messwerte, die bewertet werden sollen?</translation>
    </message>
    <message>
        <source>goes on with further readings</source>
        <translation>geht mit weiteren Messwerten weiter</translation>
    </message>
    <message>
        <source>{n} swings in one timing</source>
        <translation>{n} Schwingungen je Zeitmessung</translation>
    </message>
    <message>
        <source>the learner&apos;s own final g {number:.6g} m/s²</source>
        <translation>das eigene Endergebnis g = {number:.6g} m/s²</translation>
    </message>
    <message>
        <source>{table}: the final g in {cell} has no unit and was taken as cm/s².</source>
        <translation>{table}: Das Endergebnis für g in {cell} hat keine Einheit und wurde als cm/s² gelesen.</translation>
    </message>
    <message>
        <source>Which unit is this g in?</source>
        <translation>In welcher Einheit steht dieses g da?</translation>
    </message>
    <message>
        <source>the learner&apos;s own g {value:.6g} m/s²</source>
        <translation>das eigene g = {value:.6g} m/s²</translation>
    </message>
    <message>
        <source>mean times</source>
        <translation>mittlere Zeiten</translation>
    </message>
    <message>
        <source>the learner&apos;s own mean time {value:.6g} s</source>
        <translation>die eigene mittlere Zeit {value:.6g} s</translation>
    </message>
    <message>
        <source>the learner&apos;s own period {value:.6g} s</source>
        <translation>die eigene Schwingungsdauer {value:.6g} s</translation>
    </message>
    <message>
        <source>the learner&apos;s own T² {value:.6g} s²</source>
        <translation>das eigene T² = {value:.6g} s²</translation>
    </message>
    <message>
        <source>{table}: the values under {cell} were taken as {what}, by their size.</source>
        <translation>{table}: Die Werte unter {cell} wurden ihrer Größe nach so gelesen: {what}.</translation>
    </message>
    <message>
        <source>the file</source>
        <translation>die Datei</translation>
    </message>
    <message>
        <source>{file}: the columns pointed at could not be read: {why}.</source>
        <translation>{file}: Die gezeigten Spalten ließen sich nicht lesen: {why}.</translation>
    </message>
    <message>
        <source>{cell} lies outside the sheet</source>
        <translation>{cell} liegt außerhalb des Blatts</translation>
    </message>
    <message>
        <source>{n} is no number of swings</source>
        <translation>{n} ist keine Anzahl von Schwingungen</translation>
    </message>
    <message>
        <source>there is no sheet “{sheet}”</source>
        <translation>es gibt kein Blatt „{sheet}“</translation>
    </message>
    <message>
        <source>{unit} is no unit known here</source>
        <translation>{unit} ist keine hier bekannte Einheit</translation>
    </message>
    <message>
        <source>no length has a timing beside it</source>
        <translation>neben keiner Länge steht eine Zeit</translation>
    </message>
    <message>
        <source>it holds no cells with anything in them</source>
        <translation>keine ihrer Zellen enthält etwas</translation>
    </message>
    <message>
        <source>no heading names a length, and no two columns of numbers are tied by the pendulum&apos;s law</source>
        <translation>kein Spaltenkopf nennt eine Länge, und keine zwei Zahlenspalten hängen durch das Pendelgesetz zusammen</translation>
    </message>
    <message>
        <source>{table}: {n} tables were found; only the first {most} were read.</source>
        <translation>{table}: {n} Tabellen gefunden; nur die ersten {most} wurden gelesen.</translation>
    </message>
    <message>
        <source>{file} could not be opened: {why}.</source>
        <translation>{file} ließ sich nicht öffnen: {why}.</translation>
    </message>
    <message>
        <source>{table}: the sheet is very large; only its first {n} cells were searched for a table.</source>
        <translation>{table}: Das Blatt ist sehr groß; nur in den ersten {n} Zellen wurde nach einer Tabelle gesucht.</translation>
    </message>
    <message>
        <source>{file}: commas part the columns and the decimals alike; they were taken so that there is one number under each heading, as {text} in {cell}.</source>
        <translation>{file}: Kommas trennen Spalten und Dezimalen zugleich; sie wurden so gelesen, dass unter jedem Spaltenkopf eine Zahl steht, wie {text} in {cell}.</translation>
    </message>
    <message>
        <source>Are these the numbers in your table?</source>
        <translation>Sind das die Zahlen in deiner Tabelle?</translation>
    </message>
    <message>
        <source>{file}: no table of readings was found: {why}.</source>
        <translation>{file}: keine Messwerttabelle gefunden: {why}.</translation>
    </message>
    <message>
        <source>{table}: lengths were found, but no times beside them.</source>
        <translation>{table}: Längen gefunden, aber keine Zeiten daneben.</translation>
    </message>
    <message>
        <source>it is larger than {n} MB</source>
        <translation>sie ist größer als {n} MB</translation>
    </message>
    <message>
        <source>it is no spreadsheet or text table</source>
        <translation>sie ist weder Arbeitsmappe noch Texttabelle</translation>
    </message>
    <message>
        <source>{file}: {n} further cells could not be read as numbers.</source>
        <translation>{file}: {n} weitere Zellen ließen sich nicht als Zahlen lesen.</translation>
    </message>
    <message>
        <source>Is this the table of readings?</source>
        <translation>Ist das die Messwerttabelle?</translation>
    </message>
    <message>
        <source>Hand the file in again, as xlsx, ods or csv.</source>
        <translation>Die Datei noch einmal abgeben, als xlsx, ods oder csv.</translation>
    </message>
    <message>
        <source>{table}: this sheet is hidden and holds a table of readings too; it was left aside.</source>
        <translation>{table}: Dieses Blatt ist ausgeblendet und enthält auch eine Messwerttabelle; es blieb beiseite.</translation>
    </message>
    <message>
        <source>read in part</source>
        <translation>teilweise gelesen</translation>
    </message>
    <message>
        <source>no table found</source>
        <translation>keine Tabelle gefunden</translation>
    </message>
    <message>
        <source>not opened</source>
        <translation>nicht geöffnet</translation>
    </message>
    <message>
        <source>a length without a time</source>
        <translation>eine Länge ohne Zeit</translation>
    </message>
    <message>
        <source>hidden, left aside</source>
        <translation>ausgeblendet, beiseitegelassen</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>period</source>
        <translation>Schwingungsdauer</translation>
    </message>
    <message>
        <source>period squared</source>
        <translation>Schwingungsdauer im Quadrat</translation>
    </message>
    <message>
        <source>swings</source>
        <translation>Schwingungen</translation>
    </message>
    <message>
        <source>trial</source>
        <translation>Versuch</translation>
    </message>
    <message>
        <source>not used</source>
        <translation>nicht benutzt</translation>
    </message>
    <message>
        <source>{table}: “{text}” in {cell} was taken as {n} timings, and so were the cells like it.</source>
        <translation>{table}: „{text}“ in {cell} wurde als {n} Zeiten gelesen, ebenso die Zellen dieser Art.</translation>
    </message>
    <message>
        <source>mean {quantity}</source>
        <translation>Mittelwert {quantity}</translation>
    </message>
    <message>
        <source>in {unit}</source>
        <translation>in {unit}</translation>
    </message>
    <message>
        <source>of {n} swings</source>
        <translation>von {n} Schwingungen</translation>
    </message>
    <message>
        <source>{time:.6g} s for {n} swing</source>
        <translation>{time:.6g} s für {n} Schwingung</translation>
    </message>
    <message>
        <source>{time:.6g} s for {n} swings</source>
        <translation>{time:.6g} s für {n} Schwingungen</translation>
    </message>
    <message>
        <source>taken as several timings</source>
        <translation>als mehrere Zeiten gelesen</translation>
    </message>
    <message>
        <source>{unit} is no unit of length</source>
        <translation>{unit} ist keine Längeneinheit</translation>
    </message>
    <message>
        <source>{unit} is no unit of time</source>
        <translation>{unit} ist keine Zeiteinheit</translation>
    </message>
    <message>
        <source>it is neither a spreadsheet nor a text file</source>
        <translation>sie ist weder Arbeitsmappe noch Textdatei</translation>
    </message>
    <message>
        <source>{table}: no heading says where the lengths stand; the row from {cell} was taken, because the other numbers follow from it by the pendulum&apos;s law.</source>
        <translation>{table}: Kein Kopf sagt, wo die Längen stehen; genommen wurde die Zeile ab {cell}, weil die übrigen Zahlen durch das Pendelgesetz aus ihr folgen.</translation>
    </message>
    <message>
        <source>{table}: no heading says where the lengths stand; the column from {cell} was taken, because the other numbers follow from it by the pendulum&apos;s law.</source>
        <translation>{table}: Kein Spaltenkopf sagt, wo die Längen stehen; genommen wurde die Spalte ab {cell}, weil die übrigen Zahlen durch das Pendelgesetz aus ihr folgen.</translation>
    </message>
    <message>
        <source>What does each column hold?</source>
        <translation>Was steht in jeder Spalte?</translation>
    </message>
    <message>
        <source>taken as the first length</source>
        <translation>als erste Länge gelesen</translation>
    </message>
    <message>
        <source>it is not a number</source>
        <translation>es ist keine Zahl</translation>
    </message>
    <message>
        <source>{some} or {last}</source>
        <translation>{some} oder {last}</translation>
    </message>
    <message>
        <source>the spreadsheet holds the date {date:%d %B %Y} here, perhaps made from {typed} as it was typed</source>
        <translation>hier steht das Datum {date:%d %B %Y}, vielleicht beim Tippen aus {typed} entstanden</translation>
    </message>
    <message>
        <source>it is a true/false value</source>
        <translation>es ist ein Wahrheitswert</translation>
    </message>
    <message>
        <source>a letter or a doubled mark stands among its digits</source>
        <translation>zwischen den Ziffern steht ein Buchstabe oder ein doppeltes Zeichen</translation>
    </message>
    <message>
        <source>it is not a finite number</source>
        <translation>es ist keine endliche Zahl</translation>
    </message>
    <message>
        <source>it is not a finite number of any sensible size</source>
        <translation>es ist keine Zahl von sinnvoller Größe</translation>
    </message>
    <message>
        <source>it is a long text</source>
        <translation>es ist ein langer Text</translation>
    </message>
    <message>
        <source>it is a span of time longer than a day</source>
        <translation>es ist eine Zeitspanne von mehr als einem Tag</translation>
    </message>
    <message>
        <source>it is locked with a password</source>
        <translation>sie ist mit einem Kennwort geschützt</translation>
    </message>
    <message>
        <source>it is damaged, or not the kind of file its name says</source>
        <translation>sie ist beschädigt oder nicht von der Art, die ihr Name sagt</translation>
    </message>
    <message>
        <source>it is damaged</source>
        <translation>sie ist beschädigt</translation>
    </message>
    <message>
        <source>it unpacks to more than 200 MB</source>
        <translation>entpackt ist sie größer als 200 MB</translation>
    </message>
    <message>
        <source>it is a binary workbook (xlsb); saved as xlsx it can be read</source>
        <translation>sie ist eine binäre Arbeitsmappe (xlsb); als xlsx gespeichert lässt sie sich lesen</translation>
    </message>
    <message>
        <source>{file} holds {n} files, more than {most}; it was left out.</source>
        <translation>{file} enthält {n} Dateien, mehr als {most}; sie blieb weg.</translation>
    </message>
    <message>
        <source>has a name that climbs out of its zip file</source>
        <translation>hat einen Namen, der aus seiner Zip-Datei hinausführt</translation>
    </message>
    <message>
        <source>has a name that cannot be used</source>
        <translation>hat einen Namen, der sich nicht verwenden lässt</translation>
    </message>
    <message>
        <source>is a link inside a zip file</source>
        <translation>ist eine Verknüpfung in einer Zip-Datei</translation>
    </message>
    <message>
        <source>is locked with a password</source>
        <translation>ist mit einem Kennwort geschützt</translation>
    </message>
    <message>
        <source>unpacks to {n:.1f} GB</source>
        <translation>ist entpackt {n:.1f} GB groß</translation>
    </message>
    <message>
        <source>unpacks to {n} times its size</source>
        <translation>wird entpackt {n}-mal so groß</translation>
    </message>
    <message>
        <source>{file} is a link that leads outside the class folder; it was not followed.</source>
        <translation>{file} ist eine Verknüpfung, die aus dem Klassenordner hinausführt; ihr wurde nicht gefolgt.</translation>
    </message>
    <message>
        <source>{file} is a link to a folder that is read in its own place.</source>
        <translation>{file} ist eine Verknüpfung auf einen Ordner, der an seinem eigenen Ort gelesen wird.</translation>
    </message>
    <message>
        <source>{file} lies more than {n} folders deep and was left out.</source>
        <translation>{file} liegt mehr als {n} Ordner tief und blieb weg.</translation>
    </message>
    <message>
        <source>{file} unpacks to more than {n:.0f} GB; the rest is left out.</source>
        <translation>{file} ist entpackt größer als {n:.0f} GB; der Rest bleibt weg.</translation>
    </message>
    <message>
        <source>{file} leads outside the class folder.</source>
        <translation>{file} führt aus dem Klassenordner hinaus.</translation>
    </message>
    <message>
        <source>The folder {file} could not be opened ({error}).</source>
        <translation>Der Ordner {file} ließ sich nicht öffnen ({error}).</translation>
    </message>
    <message>
        <source>The folder holds more than {n} files; the rest is left out.</source>
        <translation>Der Ordner enthält mehr als {n} Dateien; der Rest bleibt weg.</translation>
    </message>
    <message>
        <source>{file} is a link to nothing.</source>
        <translation>{file} ist eine Verknüpfung ins Leere.</translation>
    </message>
    <message>
        <source>{file} {reason}; it was left out.</source>
        <translation>{file} {reason}; die Datei blieb weg.</translation>
    </message>
    <message>
        <source>{file} is not there any more.</source>
        <translation>{file} ist nicht mehr da.</translation>
    </message>
    <message>
        <source>{file} could not be read: it is damaged, locked by a password, or out of reach.</source>
        <translation>{file} ließ sich nicht lesen: Die Datei ist beschädigt, mit einem Kennwort geschützt oder nicht erreichbar.</translation>
    </message>
    <message>
        <source>{file} is larger than {n:.0f} MB.</source>
        <translation>{file} ist größer als {n:.0f} MB.</translation>
    </message>
    <message>
        <source>{file} could not be opened ({error}).</source>
        <translation>{file} ließ sich nicht öffnen ({error}).</translation>
    </message>
    <message>
        <source>{file} unpacks to far more than its size.</source>
        <translation>{file} ist entpackt weit größer als angegeben.</translation>
    </message>
    <message>
        <source>sheet {sheet}</source>
        <translation>Blatt {sheet}</translation>
    </message>
    <message>
        <source>cell {cell}</source>
        <translation>Zelle {cell}</translation>
    </message>
    <message>
        <source>The sample holds every flagged outlier on purpose, so these numbers describe the sample, not the class as a whole.</source>
        <translation>Die Stichprobe enthält mit Absicht alle Auffälligen; diese Zahlen beschreiben also die Stichprobe, nicht die ganze Klasse.</translation>
    </message>
    <message>
        <source>{low:+.2f} to {high:+.2f}</source>
        <translation>{low:+.2f} bis {high:+.2f}</translation>
    </message>
    <message>
        <source>mean difference {mean:+.2f} (95 % interval {around}); limits of agreement, mean ± {multiplier:g} sd: {lower:+.2f} ({around_lower}) to {upper:+.2f} ({around_upper}), n = {n}</source>
        <translation>mittlere Differenz {mean:+.2f} (95-%-Intervall {around}); Übereinstimmungsgrenzen, Mittel ± {multiplier:g} Standardabweichungen: {lower:+.2f} ({around_lower}) bis {upper:+.2f} ({around_upper}), n = {n}</translation>
    </message>
    <message>
        <source>mean difference: undefined, {why}</source>
        <translation>mittlere Differenz: nicht bestimmt, {why}</translation>
    </message>
    <message>
        <source>mean difference {mean:+.2f}; limits of agreement: undefined, {why}</source>
        <translation>mittlere Differenz {mean:+.2f}; Übereinstimmungsgrenzen: nicht bestimmt, {why}</translation>
    </message>
    <message>
        <source>one pair shows no spread</source>
        <translation>ein einziges Paar zeigt keine Streuung</translation>
    </message>
    <message>
        <source>there is no grade {grade}</source>
        <translation>es gibt keine Note {grade}</translation>
    </message>
    <message>
        <source>{grade} at {least:g} marks would pass a neighbouring grade</source>
        <translation>{grade} ab {least:g} Punkten würde eine benachbarte Note überholen</translation>
    </message>
    <message>
        <source>Without a day you are not reminded to remove them. Photos and videos here: {n}.</source>
        <translation>Ohne Tag werden Sie nicht daran erinnert, sie zu entfernen. Fotos und Videos hier: {n}.</translation>
    </message>
    <message>
        <source>From the day after, you are reminded to remove them. Photos and videos here: {n}.</source>
        <translation>Vom Tag danach an werden Sie daran erinnert, sie zu entfernen. Fotos und Videos hier: {n}.</translation>
    </message>
    <message>
        <source>nobody was marked twice</source>
        <translation>niemand wurde zweimal bewertet</translation>
    </message>
    <message>
        <source>both markers gave everyone the same level, so chance alone would agree</source>
        <translation>beide haben allen dieselbe Stufe gegeben, sodass schon der Zufall übereinstimmen würde</translation>
    </message>
    <message>
        <source>Ordinary sample: square root of the class, at least {least}, all where there are no more: {n} of {of}; highest, lowest and either side of each grade boundary first, the rest spread over the range of totals. Flagged learners on top.</source>
        <translation>Gewöhnliche Stichprobe: die Wurzel der Klassengröße, mindestens {least}, alle, wo es nicht mehr gibt: {n} von {of}; zuerst die höchste und die niedrigste Summe und beide Seiten jeder Notengrenze, der Rest über den Bereich der Summen verteilt. Auffällige kommen hinzu.</translation>
    </message>
    <message>
        <source>question for the moderator: {check}</source>
        <translation>Frage für die Zweitkorrektur: {check}</translation>
    </message>
    <message>
        <source>highest total</source>
        <translation>höchste Summe</translation>
    </message>
    <message>
        <source>lowest total</source>
        <translation>niedrigste Summe</translation>
    </message>
    <message>
        <source>the numbers suggest a slip</source>
        <translation>die Zahlen legen ein Versehen nahe</translation>
    </message>
    <message>
        <source>marked {apart} of {most} against the drafts</source>
        <translation>um {apart} von {most} Punkten anders bewertet als die Entwürfe</translation>
    </message>
    <message>
        <source>drawn from run {run} of {runs} over the range of totals</source>
        <translation>gezogen aus Abschnitt {run} von {runs} über den Bereich der Summen</translation>
    </message>
    <message>
        <source>nearest at or above grade {grade} ({least})</source>
        <translation>am nächsten an oder über der Note {grade} ({least})</translation>
    </message>
    <message>
        <source>nearest below grade {grade} ({least})</source>
        <translation>am nächsten unter der Note {grade} ({least})</translation>
    </message>
    <message>
        <source>latitude {latitude:g}°, height not given (0–500 m)</source>
        <translation>Breite {latitude:g}°, Höhe nicht angegeben (0–500 m)</translation>
    </message>
    <message>
        <source>latitude {latitude:g}°, height {height:g} m</source>
        <translation>Breite {latitude:g}°, Höhe {height:g} m</translation>
    </message>
    <message>
        <source>no place in the brief: anywhere people live, {range} m/s²</source>
        <translation>kein Ort im Auftrag: irgendwo, wo Menschen leben, {range} m/s²</translation>
    </message>
    <message>
        <source>only numbers, quoted texts, facts, + - * /, comparisons, in (…), and, or, not and known(fact) may stand in a condition</source>
        <translation>in einer Bedingung dürfen nur Zahlen, Texte in Anführungszeichen, Tatsachen, + - * /, Vergleiche, in (…), and, or, not und known(Tatsache) stehen</translation>
    </message>
    <message>
        <source>a number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <source>a text</source>
        <translation>ein Text</translation>
    </message>
    <message>
        <source>a yes or no</source>
        <translation>ein Ja oder Nein</translation>
    </message>
    <message>
        <source>“{part}” is not allowed: {allowed}</source>
        <translation>„{part}“ ist nicht erlaubt: {allowed}</translation>
    </message>
    <message>
        <source>is longer than {n} characters</source>
        <translation>ist länger als {n} Zeichen</translation>
    </message>
    <message>
        <source>did you mean “{word}”?</source>
        <translation>gemeint „{word}“?</translation>
    </message>
    <message>
        <source>“{part}” is {kind} where {wanted} is needed</source>
        <translation>„{part}“ ist {kind}, wo {wanted} nötig ist</translation>
    </message>
    <message>
        <source>“{one} … {other}”: {allowed}</source>
        <translation>„{one} … {other}“: {allowed}</translation>
    </message>
    <message>
        <source>“{one}” ({kind}) cannot be compared with “{other}” ({other_kind})</source>
        <translation>„{one}“ ({kind}) lässt sich nicht mit „{other}“ ({other_kind}) vergleichen</translation>
    </message>
    <message>
        <source>there is no fact “{name}”</source>
        <translation>es gibt keine Tatsache „{name}“</translation>
    </message>
    <message>
        <source>after “in” stands a list in brackets, not “{part}”</source>
        <translation>nach „in“ steht eine Liste in Klammern, nicht „{part}“</translation>
    </message>
    <message>
        <source>“{one}” ({kind}) has no order: only == and != may compare it</source>
        <translation>„{one}“ ({kind}) hat keine Reihenfolge: Nur == und != dürfen es vergleichen</translation>
    </message>
    <message>
        <source>The table of readings could not be understood, so no level is drafted.</source>
        <translation>Die Messwerttabelle ließ sich nicht verstehen; deshalb ist keine Stufe entworfen.</translation>
    </message>
    <message>
        <source>A photo is here and nobody has said what it shows, so no level is drafted.</source>
        <translation>Ein Foto ist da, und niemand hat gesagt, was es zeigt; deshalb ist keine Stufe entworfen.</translation>
    </message>
    <message>
        <source>A piece was handed in that will not open here, so no level is drafted.</source>
        <translation>Ein abgegebenes Stück lässt sich hier nicht öffnen; deshalb ist keine Stufe entworfen.</translation>
    </message>
    <message>
        <source>For your eye: {title}. “{best}” asks: {what}</source>
        <translation>Für Ihren Blick: {title}. „{best}“ verlangt: {what}</translation>
    </message>
    <message>
        <source>“{level}” asks for nothing more.</source>
        <translation>„{level}“ verlangt nichts weiter.</translation>
    </message>
    <message>
        <source>less than {bound}</source>
        <translation>weniger als {bound}</translation>
    </message>
    <message>
        <source>a list</source>
        <translation>eine Liste</translation>
    </message>
    <message>
        <source>true or false</source>
        <translation>true oder false</translation>
    </message>
    <message>
        <source>“{name}” must be the name of a rubric, not a path</source>
        <translation>„{name}“ muss der Name eines Rasters sein, kein Pfad</translation>
    </message>
    <message>
        <source>is a link that leads outside the class folder</source>
        <translation>ist eine Verknüpfung, die aus dem Klassenordner hinausführt</translation>
    </message>
    <message>
        <source>there is no rubric “{name}”</source>
        <translation>es gibt kein Raster „{name}“</translation>
    </message>
    <message>
        <source>cannot be opened: {why}</source>
        <translation>lässt sich nicht öffnen: {why}</translation>
    </message>
    <message>
        <source>is not UTF-8 text</source>
        <translation>ist kein Text in UTF-8</translation>
    </message>
    <message>
        <source>is not valid TOML: {why}</source>
        <translation>ist kein gültiges TOML: {why}</translation>
    </message>
    <message>
        <source>“{role}” is not a role of a by_eye criterion ({allowed})</source>
        <translation>„{role}“ ist keine Rolle eines Kriteriums mit by_eye ({allowed})</translation>
    </message>
    <message>
        <source>“{role}” is not a role of a drafted criterion ({allowed})</source>
        <translation>„{role}“ ist keine Rolle eines entworfenen Kriteriums ({allowed})</translation>
    </message>
    <message>
        <source>a number of very many digits</source>
        <translation>eine Zahl mit sehr vielen Ziffern</translation>
    </message>
    <message>
        <source>Times worked out from the formula rather than taken by hand would explain it: they lie within about {misfit} s of g = {formula_g} m/s², while hand timing usually scatters by about 0.1 s. A careful hand may come as near.</source>
        <translation>Aus der Formel berechnete statt von Hand gestoppte Zeiten würden es erklären: Sie liegen etwa {misfit} s um g = {formula_g} m/s², während von Hand gestoppte Zeiten meist um etwa 0,1 s streuen. Eine sorgfältige Hand kann ebenso nah herankommen.</translation>
    </message>
    <message>
        <source>Repeats written down after the first timing rather than taken by hand would explain it: they agree to about {misfit} s, while hand timing usually scatters by about 0.1 s from one timing to the next. A careful hand may come as near.</source>
        <translation>Wiederholungen, die nach der ersten Messung hingeschrieben statt von Hand gestoppt wurden, würden es erklären: Sie stimmen auf etwa {misfit} s überein, während von Hand gestoppte Zeiten von Messung zu Messung meist um etwa 0,1 s streuen. Eine sorgfältige Hand kann ebenso nah herankommen.</translation>
    </message>
    <message>
        <source>a length timed once only</source>
        <translation>eine nur einmal gestoppte Länge</translation>
    </message>
    <message>
        <source>the only timing at that length</source>
        <translation>die einzige Messung bei dieser Länge</translation>
    </message>
    <message>
        <source>readings that a slip may explain</source>
        <translation>Messwerte, die ein Versehen erklären kann</translation>
    </message>
    <message>
        <source>a count of swings in doubt</source>
        <translation>eine fragliche Zahl von Schwingungen</translation>
    </message>
    <message>
        <source>a unit or a display in doubt</source>
        <translation>eine fragliche Einheit oder Anzeige</translation>
    </message>
    <message>
        <source>times in doubt of being closer than a hand can time</source>
        <translation>Zeiten, die fraglich näher beieinander liegen, als eine Hand stoppen kann</translation>
    </message>
    <message>
        <source>g hardly changes by it: {g_mended}.</source>
        <translation>g ändert sich dadurch kaum: {g_mended}.</translation>
    </message>
    <message>
        <source>The line then gives g = {line_mended} instead of {line_before}; the best estimate, {g_mended}, hardly moves.</source>
        <translation>Die Gerade ergibt dann g = {line_mended} statt {line_before}; der beste Schätzwert, {g_mended}, ändert sich kaum.</translation>
    </message>
    <message>
        <source>One thing would explain these readings: {one}.</source>
        <translation>Eines würde diese Messwerte erklären: {one}.</translation>
    </message>
    <message>
        <source>Two things together would explain these readings: {one}, and {other}.</source>
        <translation>Zweierlei zusammen würde diese Messwerte erklären: {one} und {other}.</translation>
    </message>
    <message>
        <source>Neither ordinary scatter nor any explanation tried comes near these readings: a single number may be wrong in a way of its own.</source>
        <translation>Weder gewöhnliche Streuung noch eine der geprüften Erklärungen kommt diesen Messwerten nahe: Eine einzelne Zahl kann auf ihre eigene Weise falsch sein.</translation>
    </message>
    <message>
        <source>Please hand in the photo of the set-up.</source>
        <translation>Bitte gib das Foto vom Aufbau ab.</translation>
    </message>
    <message>
        <source>Please hand in the photo of you with the set-up.</source>
        <translation>Bitte gib das Foto von dir mit dem Aufbau ab.</translation>
    </message>
    <message>
        <source>Please hand in the video of the swings.</source>
        <translation>Bitte gib das Video der Schwingungen ab.</translation>
    </message>
    <message>
        <source>Please hand in the table of readings.</source>
        <translation>Bitte gib die Tabelle der Messwerte ab.</translation>
    </message>
    <message>
        <source>Please hand in the written report.</source>
        <translation>Bitte gib den schriftlichen Bericht ab.</translation>
    </message>
    <message>
        <source>The name of one photo does not say what it shows; it could be the {name}.</source>
        <translation>Der Name eines Fotos sagt nicht, was es zeigt; es könnte dies sein: {name}.</translation>
    </message>
    <message>
        <source>The names of {n} photos do not say what they show; the {name} could be among them.</source>
        <translation>Die Namen von {n} Fotos sagen nicht, was sie zeigen; darunter könnte dies sein: {name}.</translation>
    </message>
    <message>
        <source>The names of {n} photos do not say what they show; the photo of the set-up and that of the learner with it could be among them.</source>
        <translation>Die Namen von {n} Fotos sagen nicht, was sie zeigen; das Foto vom Aufbau und das der Person mit dem Aufbau könnten darunter sein.</translation>
    </message>
    <message>
        <source>What does your photo show: the set-up alone, or you with it?</source>
        <translation>Was zeigt dein Foto: den Aufbau allein oder dich mit dem Aufbau?</translation>
    </message>
    <message>
        <source>Which of your photos shows the set-up, and which shows you with it?</source>
        <translation>Welches deiner Fotos zeigt den Aufbau, und welches zeigt dich mit ihm?</translation>
    </message>
    <message>
        <source>Handed in on {day:%d %B %Y}, {late} after the last day, {closes:%d %B %Y} (latest: {sources}).</source>
        <translation>Abgegeben am {day:%d %B %Y}, {late} nach dem letzten Tag, dem {closes:%d %B %Y} (zuletzt: {sources}).</translation>
    </message>
    <message>
        <source>The latest file carries the date {day:%d %B %Y}, {early} before the first day, {opens:%d %B %Y} ({sources}).</source>
        <translation>Die letzte Datei trägt das Datum {day:%d %B %Y}, {early} vor dem ersten Tag, dem {opens:%d %B %Y} ({sources}).</translation>
    </message>
    <message>
        <source>The photo shows an even surface: one shade of grey all over.</source>
        <translation>Das Foto zeigt eine gleichmäßige Fläche: überall derselbe Grauton.</translation>
    </message>
    <message>
        <source>This cannot be shown: {why}.</source>
        <translation>Das lässt sich nicht zeigen: {why}.</translation>
    </message>
    <message>
        <source>it is larger than {n} kB</source>
        <translation>sie ist größer als {n} kB</translation>
    </message>
    <message>
        <source>No heading of a class list was found in {file}; the names were taken from column {column}, which begins with “{first}”. One row should name the columns, as “id, name, group”.</source>
        <translation>In {file} fanden sich keine Überschriften einer Klassenliste; die Namen wurden aus Spalte {column} genommen, die mit „{first}“ beginnt. Eine Zeile soll die Spalten benennen, etwa „Kennung, Name, Gruppe“.</translation>
    </message>
    <message>
        <source>length {length:.6g} cm</source>
        <translation>Länge {length:.6g} cm</translation>
    </message>
    <message>
        <source>“{text}” is the id</source>
        <translation>„{text}“ ist die Kennung</translation>
    </message>
    <message>
        <source>by its folder: {why}</source>
        <translation>nach dem Ordner: {why}</translation>
    </message>
    <message>
        <source>“{text}” is too little to go by: {why}</source>
        <translation>„{text}“ reicht zum Zuordnen nicht aus: {why}</translation>
    </message>
    <message>
        <source>“{text}” fits {n} learners about as well</source>
        <translation>„{text}“ passt etwa gleich gut auf {n} Lernende</translation>
    </message>
    <message>
        <source>“{text}” is the id {id} but for zeros</source>
        <translation>„{text}“ ist bis auf Nullen die Kennung {id}</translation>
    </message>
    <message>
        <source>the id “{id}” stands in “{text}”</source>
        <translation>die Kennung „{id}“ steht in „{text}“</translation>
    </message>
    <message>
        <source>“{form}” is {name}: {why}</source>
        <translation>„{form}“ ist {name}: {why}</translation>
    </message>
    <message>
        <source>the names written as one word</source>
        <translation>die Namen in einem Wort geschrieben</translation>
    </message>
    <message>
        <source>a name and an initial written together</source>
        <translation>ein Name und ein Anfangsbuchstabe zusammengeschrieben</translation>
    </message>
    <message>
        <source>“{form}” may be short for “{longer}” ({name})</source>
        <translation>„{form}“ kann für „{longer}“ stehen ({name})</translation>
    </message>
    <message>
        <source>“{form}” is nearly “{near}” ({name})</source>
        <translation>„{form}“ ist fast „{near}“ ({name})</translation>
    </message>
    <message>
        <source>only the initials “{token}” of {name}</source>
        <translation>nur die Anfangsbuchstaben „{token}“ von {name}</translation>
    </message>
    <message>
        <source>it lies in “{folder}”</source>
        <translation>es liegt in „{folder}“</translation>
    </message>
    <message>
        <source>the file is called “{name}”</source>
        <translation>die Datei heißt „{name}“</translation>
    </message>
    <message>
        <source>{one} or {other}</source>
        <translation>{one} oder {other}</translation>
    </message>
    <message>
        <source>You said that it is not from {whose}.</source>
        <translation>Sie haben gesagt, dass es nicht von {whose} ist.</translation>
    </message>
    <message>
        <source>folder and file name point to different learners</source>
        <translation>Ordner und Dateiname weisen auf verschiedene Lernende</translation>
    </message>
    <message>
        <source>settled by the teacher</source>
        <translation>von der Lehrkraft zugeordnet</translation>
    </message>
    <message>
        <source>by its row in the class sheet: {why}</source>
        <translation>nach der Zeile in der Klassentabelle: {why}</translation>
    </message>
    <message>
        <source>Were these lengths timed, and what were the times?</source>
        <translation>Wurden diese Längen gestoppt, und welche Zeiten waren es?</translation>
    </message>
    <message>
        <source>Could you hand the readings in?</source>
        <translation>Kannst du die Messwerte abgeben?</translation>
    </message>
    <message>
        <source>Which value belongs here?</source>
        <translation>Welcher Wert gehört hierher?</translation>
    </message>
    <message>
        <source>Which column holds the lengths, and which the times?</source>
        <translation>Welche Spalte enthält die Längen und welche die Zeiten?</translation>
    </message>
    <message>
        <source>an S may stand for seconds or for a 5</source>
        <translation>ein S kann für Sekunden oder für eine 5 stehen</translation>
    </message>
    <message>
        <source>{file}: the class folder is out of reach.</source>
        <translation>{file}: Der Klassenordner ist nicht erreichbar.</translation>
    </message>
    <message>
        <source>ICC{form} {value:.2f} (95 % interval {low:.2f} to {high:.2f})</source>
        <translation>ICC{form} {value:.2f} (95-%-Intervall {low:.2f} bis {high:.2f})</translation>
    </message>
    <message>
        <source>ICC{form}: undefined, {why}</source>
        <translation>ICC{form}: nicht bestimmt, {why}</translation>
    </message>
    <message>
        <source>every learner has the same mean mark</source>
        <translation>alle Lernenden haben im Mittel dieselben Punkte</translation>
    </message>
    <message>
        <source>fewer than two learners or markers</source>
        <translation>weniger als zwei Lernende oder Bewertende</translation>
    </message>
    <message>
        <source>the markers&apos; spread drowns it</source>
        <translation>die Streuung zwischen den Bewertenden überdeckt es</translation>
    </message>
    <message>
        <source>adjusted to different marks ({words})</source>
        <translation>auf verschiedene Punkte angepasst ({words})</translation>
    </message>
    <message>
        <source>{by} to {marks:g}</source>
        <translation>{by} auf {marks:g}</translation>
    </message>
    <message>
        <source>{by} asks: {why}</source>
        <translation>{by} fragt: {why}</translation>
    </message>
    <message>
        <source>{by} gave {marks:g}</source>
        <translation>{by} gab {marks:g}</translation>
    </message>
    <message>
        <source>Readings as a recomputed table, with the cell each value was read from.</source>
        <translation>Messwerte als nachgerechnete Tabelle, mit der Zelle, aus der jeder Wert stammt.</translation>
    </message>
    <message>
        <source>Findings, first marks and their reasons, with names replaced. A name that is also a word (Mark, Will) is replaced where it is written as a name.</source>
        <translation>Befunde, Erstbewertungen und ihre Gründe, mit ersetzten Namen. Ein Name, der auch ein Wort ist (Ernst, Wolf), wird ersetzt, wo er als Name geschrieben steht.</translation>
    </message>
    <message>
        <source>Photos and videos without place, device or other tags; videos without sound.</source>
        <translation>Fotos und Videos ohne Angaben zu Ort, Gerät und anderem; Videos ohne Ton.</translation>
    </message>
    <message>
        <source>Written reports, where the brief allows them, as their words alone with names replaced.</source>
        <translation>Schriftliche Berichte, wo der Auftrag sie erlaubt, nur als Wörter und mit ersetzten Namen.</translation>
    </message>
    <message>
        <source>Names, ids and the class list.</source>
        <translation>Namen, Kennungen und die Klassenliste.</translation>
    </message>
    <message>
        <source>The learners&apos; own table files, in which names may stand.</source>
        <translation>Die Tabellendateien der Lernenden selbst, in denen Namen stehen können.</translation>
    </message>
    <message>
        <source>Private notes and the journal.</source>
        <translation>Private Notizen und das Journal.</translation>
    </message>
    <message>
        <source>{what} of learner {numbers}</source>
        <translation>{what} von Portfolio {numbers}</translation>
    </message>
    <message>
        <source>{what} of learners {numbers}</source>
        <translation>{what} der Portfolios {numbers}</translation>
    </message>
    <message>
        <source>Learner {number}: {what} left out:</source>
        <translation>Portfolio {number}: {what} nicht dabei:</translation>
    </message>
    <message>
        <source>{what}: second − first {mean:+.2f} marks on average, exact {p}, n = {n}</source>
        <translation>{what}: zweite − erste im Mittel {mean:+.2f} Punkte, exakt {p}, n = {n}</translation>
    </message>
    <message>
        <source>{what}: second − first {mean:+.2f} marks on average (95 % interval {low:+.2f} to {high:+.2f}), exact {p}, n = {n}</source>
        <translation>{what}: zweite − erste im Mittel {mean:+.2f} Punkte (95-%-Intervall {low:+.2f} bis {high:+.2f}), exakt {p}, n = {n}</translation>
    </message>
    <message>
        <source>p undefined</source>
        <translation>p nicht bestimmt</translation>
    </message>
    <message>
        <source>{what}: nobody was marked twice</source>
        <translation>{what}: niemand wurde zweimal bewertet</translation>
    </message>
    <message>
        <source>A written report is here, and the working may stand in it. Reports are not read by the program, so no level is drafted.</source>
        <translation>Ein schriftlicher Bericht liegt vor, und die Auswertung kann darin stehen. Das Programm liest Berichte nicht, daher wird keine Stufe entworfen.</translation>
    </message>
    <message>
        <source>A written report is here, and the readings may stand in it. Reports are not read by the program, so no level is drafted.</source>
        <translation>Ein schriftlicher Bericht liegt vor, und die Messwerte können darin stehen. Das Programm liest Berichte nicht, daher wird keine Stufe entworfen.</translation>
    </message>
    <message>
        <source>there is no criterion</source>
        <translation>es gibt kein Kriterium</translation>
    </message>
    <message>
        <source>“{id}” is used by two criteria</source>
        <translation>„{id}“ steht bei zwei Kriterien</translation>
    </message>
    <message>
        <source>“{id}” must be small letters, digits and _, a letter first</source>
        <translation>„{id}“ muss aus Kleinbuchstaben, Ziffern und _ bestehen, mit einem Buchstaben am Anfang</translation>
    </message>
    <message>
        <source>must be 0 or more, not {marks}</source>
        <translation>muss 0 oder mehr sein, nicht {marks}</translation>
    </message>
    <message>
        <source>needs at least two levels</source>
        <translation>braucht mindestens zwei Stufen</translation>
    </message>
    <message>
        <source>two levels are called “{name}”</source>
        <translation>zwei Stufen heißen „{name}“</translation>
    </message>
    <message>
        <source>is missing</source>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>must be a text or a list of texts</source>
        <translation>muss ein Text oder eine Liste von Texten sein</translation>
    </message>
    <message>
        <source>praise must rest on a fact of the learner&apos;s own work</source>
        <translation>Lob muss auf einer Tatsache aus der eigenen Arbeit beruhen</translation>
    </message>
    <message>
        <source>is empty</source>
        <translation>ist leer</translation>
    </message>
    <message>
        <source>must be written as [[…{key}]] tables</source>
        <translation>muss als Tabellen [[…{key}]] geschrieben sein</translation>
    </message>
    <message>
        <source>{below:g} is not below the {above:g} of the level before it: levels stand highest first</source>
        <translation>{below:g} liegt nicht unter den {above:g} der Stufe davor: Die höchste Stufe steht zuerst</translation>
    </message>
    <message>
        <source>is never used: the criterion is by_eye</source>
        <translation>wird nie benutzt: Das Kriterium ist by_eye</translation>
    </message>
    <message>
        <source>holds something that is not a text, or an empty one</source>
        <translation>enthält etwas, das kein Text ist, oder einen leeren</translation>
    </message>
    <message>
        <source>there is no key “{key}” here</source>
        <translation>einen Schlüssel „{key}“ gibt es hier nicht</translation>
    </message>
    <message>
        <source>must be {wanted}, not {value}</source>
        <translation>muss {wanted} sein, nicht {value}</translation>
    </message>
    <message>
        <source>the last level must have no condition</source>
        <translation>die letzte Stufe darf keine Bedingung haben</translation>
    </message>
    <message>
        <source>praise must quote a fact of the learner&apos;s own work: “{words}”</source>
        <translation>Lob muss eine Tatsache aus der eigenen Arbeit nennen: „{words}“</translation>
    </message>
    <message>
        <source>must be a text</source>
        <translation>muss ein Text sein</translation>
    </message>
    <message>
        <source>is missing: only the last level has no condition</source>
        <translation>fehlt: Nur die letzte Stufe hat keine Bedingung</translation>
    </message>
    <message>
        <source>there is no placeholder “{name}”</source>
        <translation>es gibt keinen Platzhalter „{name}“</translation>
    </message>
    <message>
        <source>“{name}” brings its own format; write it without “:” or “!”</source>
        <translation>„{name}“ bringt seine Form selbst mit; bitte ohne „:“ oder „!“ schreiben</translation>
    </message>
    <message>
        <source>{places} is still to be filled in</source>
        <translation>{places} ist noch auszufüllen</translation>
    </message>
    <message>
        <source>{places} are still to be filled in</source>
        <translation>{places} sind noch auszufüllen</translation>
    </message>
    <message>
        <source>criterion “{id}”</source>
        <translation>Kriterium „{id}“</translation>
    </message>
    <message>
        <source>other than {value}</source>
        <translation>nicht {value}</translation>
    </message>
    <message>
        <source>{fact}: not known, and not held against the learner</source>
        <translation>{fact}: nicht bekannt, und zählt nicht gegen die Person</translation>
    </message>
    <message>
        <source>{one} and {other}</source>
        <translation>{one} und {other}</translation>
    </message>
    <message>
        <source>{one}, or {other}</source>
        <translation>{one} – oder {other}</translation>
    </message>
    <message>
        <source>the condition holds ({told})</source>
        <translation>die Bedingung ist erfüllt ({told})</translation>
    </message>
    <message>
        <source>the condition does not hold ({told})</source>
        <translation>die Bedingung ist nicht erfüllt ({told})</translation>
    </message>
    <message>
        <source>For “{level}”: {told}.</source>
        <translation>Für „{level}“ – {told}.</translation>
    </message>
    <message>
        <source>{fact}: {found} ({wanted} needed)</source>
        <translation>{fact}: {found} (nötig: {wanted})</translation>
    </message>
    <message>
        <source>needs {wanted} {fact}; {found} found</source>
        <translation>nötig: {wanted} {fact}; gefunden: {found}</translation>
    </message>
    <message>
        <source>{fact} is {found} ({wanted} needed)</source>
        <translation>{fact}: {found} (nötig: {wanted})</translation>
    </message>
    <message>
        <source>needs {fact} of {wanted}; it is {found}</source>
        <translation>nötig: {fact} {wanted}; hier: {found}</translation>
    </message>
    <message>
        <source>less than {value}</source>
        <translation>weniger als {value}</translation>
    </message>
    <message>
        <source>at most {value}</source>
        <translation>höchstens {value}</translation>
    </message>
    <message>
        <source>more than {value}</source>
        <translation>mehr als {value}</translation>
    </message>
    <message>
        <source>at least {value}</source>
        <translation>mindestens {value}</translation>
    </message>
    <message>
        <source>exactly {value}</source>
        <translation>genau {value}</translation>
    </message>
    <message>
        <source>must be without {fact}; {found}</source>
        <translation>darf nicht sein: {fact}; {found}</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>{fact}: not known</source>
        <translation>{fact}: nicht bekannt</translation>
    </message>
    <message>
        <source>this condition cannot be read: there are too many brackets in brackets</source>
        <translation>diese Bedingung lässt sich nicht lesen: zu viele Klammern in Klammern</translation>
    </message>
    <message>
        <source>this condition cannot be read: {why}</source>
        <translation>diese Bedingung lässt sich nicht lesen: {why}</translation>
    </message>
    <message>
        <source>this sentence cannot be read: a curly bracket closes nothing</source>
        <translation>dieser Satz lässt sich nicht lesen: eine geschweifte Klammer schließt nichts</translation>
    </message>
    <message>
        <source>something is missing or too much</source>
        <translation>etwas fehlt oder ist zu viel</translation>
    </message>
    <message>
        <source>this sentence cannot be read: a curly bracket is not closed</source>
        <translation>dieser Satz lässt sich nicht lesen: eine geschweifte Klammer ist nicht geschlossen</translation>
    </message>
    <message>
        <source>a quotation mark is not closed</source>
        <translation>ein Anführungszeichen ist nicht geschlossen</translation>
    </message>
    <message>
        <source>a bracket is not closed</source>
        <translation>eine Klammer ist nicht geschlossen</translation>
    </message>
    <message>
        <source>to compare, write == instead of =</source>
        <translation>zum Vergleichen == statt = schreiben</translation>
    </message>
    <message>
        <source>write and, or, not instead of signs</source>
        <translation>and, or, not statt Zeichen schreiben</translation>
    </message>
    <message>
        <source>write &lt;= or &gt;=, the sign = last</source>
        <translation>&lt;= oder &gt;= schreiben, das Zeichen = zuletzt</translation>
    </message>
    <message>
        <source>something is missing at the end</source>
        <translation>am Ende fehlt etwas</translation>
    </message>
    <message>
        <source>something is missing in “{words}”</source>
        <translation>in „{words}“ fehlt etwas</translation>
    </message>
    <message>
        <source>a bracket closes nothing</source>
        <translation>eine Klammer schließt nichts</translation>
    </message>
    <message>
        <source>The same level for {n} of {of} learners; among many such learners it might be {low:.0f} to {high:.0f} %.</source>
        <translation>Dieselbe Stufe bei {n} von {of} Lernenden; bei vielen solchen Lernenden könnten es {low:.0f} bis {high:.0f} % sein.</translation>
    </message>
    <message>
        <source>Nobody has a first and a second mark here yet.</source>
        <translation>Hier hat noch niemand eine erste und eine zweite Bewertung.</translation>
    </message>
    <message>
        <source>{n} learner was marked in full by both. So few fix no figure closely: read the intervals, not the values.</source>
        <translation>{n} Person wurde von beiden ganz bewertet. So wenige legen keine Zahl eng fest: Lesen Sie die Intervalle, nicht die Werte.</translation>
    </message>
    <message>
        <source>{n} learners were marked in full by both. So few fix no figure closely: read the intervals, not the values.</source>
        <translation>{n} Lernende wurden von beiden ganz bewertet. So wenige legen keine Zahl eng fest: Lesen Sie die Intervalle, nicht die Werte.</translation>
    </message>
    <message>
        <source>Too few to say more.</source>
        <translation>Zu wenige, um mehr zu sagen.</translation>
    </message>
    <message>
        <source>the set-up photo</source>
        <translation>das Aufbaufoto</translation>
    </message>
    <message>
        <source>the photo of themselves</source>
        <translation>das Foto der Person</translation>
    </message>
    <message>
        <source>the photo</source>
        <translation>das Foto</translation>
    </message>
    <message>
        <source>the swing video</source>
        <translation>das Schwingungsvideo</translation>
    </message>
    <message>
        <source>the report</source>
        <translation>der Bericht</translation>
    </message>
    <message>
        <source>{n} of the {of} tables {what}.</source>
        <translation>{n} der {of} Tabellen {what}.</translation>
    </message>
    <message>
        <source>Of the {n} learners, {parts}.</source>
        <translation>Von den {n} Lernenden: {parts}.</translation>
    </message>
    <message>
        <source>Stands over the task sheet, the mark sheet and every feedback sheet ({n}).</source>
        <translation>Steht über dem Aufgabenblatt, der Punkteliste und jedem Rückmeldebogen ({n}).</translation>
    </message>
    <message>
        <source>{n} of the {of} lengths are longer than that.</source>
        <translation>{n} der {of} Längen sind länger.</translation>
    </message>
    <message>
        <source>Pairs that may have the same readings: {n}.</source>
        <translation>Paare, die dieselben Messwerte haben dürfen: {n}.</translation>
    </message>
    <message>
        <source>{n} learner handed in before this day.</source>
        <translation>{n} Person hat vor diesem Tag abgegeben.</translation>
    </message>
    <message>
        <source>{n} learners handed in before this day.</source>
        <translation>{n} Lernende haben vor diesem Tag abgegeben.</translation>
    </message>
    <message>
        <source>{n} learner has a piece that is dated later.</source>
        <translation>{n} Person hat ein Stück mit späterem Datum.</translation>
    </message>
    <message>
        <source>{n} learners have a piece that is dated later.</source>
        <translation>{n} Lernende haben ein Stück mit späterem Datum.</translation>
    </message>
    <message>
        <source>This bears on {n} learner so far.</source>
        <translation>Das betrifft bisher {n} Person.</translation>
    </message>
    <message>
        <source>This bears on {n} learners so far.</source>
        <translation>Das betrifft bisher {n} Lernende.</translation>
    </message>
    <message>
        <source>Every day late counts; the latest so far loses {marks}.</source>
        <translation>Jeder Tag Verspätung zählt; die späteste Abgabe verliert bisher {marks}.</translation>
    </message>
    <message>
        <source>{n:g} mark</source>
        <translation>{n:g} Punkt</translation>
    </message>
    <message>
        <source>{n:g} marks</source>
        <translation>{n:g} Punkte</translation>
    </message>
    <message>
        <source>{parts}; no grade below.</source>
        <translation>{parts}; darunter keine Note.</translation>
    </message>
    <message>
        <source>Feedback, reminders, task sheet and table of readings are written in it.</source>
        <translation>In ihr sind Rückmeldung, Erinnerungen, Aufgabenblatt und Messwerttabelle geschrieben.</translation>
    </message>
    <message>
        <source>Feedback and task sheet call the length: {word}.</source>
        <translation>Rückmeldung und Aufgabenblatt nennen die Länge: {word}.</translation>
    </message>
    <message>
        <source>Feedback and task sheet call the time: {word}.</source>
        <translation>Rückmeldung und Aufgabenblatt nennen die Zeit: {word}.</translation>
    </message>
    <message>
        <source>Feedback and task sheet call what stays the same, as the bob: {word}.</source>
        <translation>Rückmeldung und Aufgabenblatt nennen, was gleich bleibt wie der Pendelkörper: {word}.</translation>
    </message>
    <message>
        <source>Photos of learners that a pack of the whole class would hold: {n}.</source>
        <translation>Fotos von Lernenden, die ein Paket der ganzen Klasse enthielte: {n}.</translation>
    </message>
    <message>
        <source>Photos of learners that stay here: {n}.</source>
        <translation>Fotos von Lernenden, die hier bleiben: {n}.</translation>
    </message>
    <message>
        <source>Reports that a pack of the whole class would hold, as words: {n}.</source>
        <translation>Berichte, die ein Paket der ganzen Klasse als Text enthielte: {n}.</translation>
    </message>
    <message>
        <source>Reports that stay here: {n}.</source>
        <translation>Berichte, die hier bleiben: {n}.</translation>
    </message>
    <message>
        <source>Local g: {g} ({basis}).</source>
        <translation>Örtliches g: {g} ({basis}).</translation>
    </message>
    <message>
        <source>g is {less:.4f} m/s² less here than at the sea.</source>
        <translation>g ist hier um {less:.4f} m/s² kleiner als auf Meereshöhe.</translation>
    </message>
    <message>
        <source>g is {less:.4f} m/s² more here than at the sea.</source>
        <translation>g ist hier um {less:.4f} m/s² größer als auf Meereshöhe.</translation>
    </message>
    <message>
        <source>Close means {low:.2f} to {high:.2f} m/s² here.</source>
        <translation>Nah heißt hier {low:.2f} bis {high:.2f} m/s².</translation>
    </message>
    <message>
        <source>Where a learner&apos;s readings give {g:.2f} m/s², {low:.2f} to {high:.2f} m/s² pass as worked out right.</source>
        <translation>Wo die Messwerte {g:.2f} m/s² ergeben, gelten {low:.2f} bis {high:.2f} m/s² als richtig ausgerechnet.</translation>
    </message>
    <message>
        <source>About 1 honest learner in {n} is asked a needless question by such a check.</source>
        <translation>Etwa 1 von {n} ehrlichen Lernenden bekommt von einer solchen Prüfung eine unnötige Frage.</translation>
    </message>
    <message>
        <source>At {n} swings that is {scatter:.2g} s on one swing.</source>
        <translation>Bei {n} Schwingungen sind das {scatter:.2g} s auf eine Schwingung.</translation>
    </message>
    <message>
        <source>Not among the ids of the class list (such as {id}): {strange}.</source>
        <translation>Nicht unter den Kennungen der Klassenliste (wie {id}): {strange}.</translation>
    </message>
    <message>
        <source>Above the {most:g} marks of the rubric: {grades}.</source>
        <translation>Über den {most:g} Punkten des Rasters: {grades}.</translation>
    </message>
    <message>
        <source>There are no sentences in this language: English goes out.</source>
        <translation>In dieser Sprache gibt es keine Sätze: Hinaus geht Englisch.</translation>
    </message>
    <message>
        <source>have {n} lengths or more</source>
        <translation>haben mindestens {n} Längen</translation>
    </message>
    <message>
        <source>have {n} or more timings at every length</source>
        <translation>haben bei jeder Länge mindestens {n} Zeiten</translation>
    </message>
    <message>
        <source>{n} says {swings} swings</source>
        <translation>{n} nennt {swings} Schwingungen</translation>
    </message>
    <message>
        <source>{n} say {swings} swings</source>
        <translation>{n} nennen {swings} Schwingungen</translation>
    </message>
    <message>
        <source>Of the tables, {parts}.</source>
        <translation>Von den Tabellen: {parts}.</translation>
    </message>
    <message>
        <source>keep to {counts}</source>
        <translation>halten sich an {counts}</translation>
    </message>
    <message>
        <source>{n} of the {of} lengths are shorter.</source>
        <translation>{n} der {of} Längen sind kürzer.</translation>
    </message>
    <message>
        <source>{n} of the {of} lengths are longer.</source>
        <translation>{n} der {of} Längen sind länger.</translation>
    </message>
    <message>
        <source>reach it</source>
        <translation>erreichen es</translation>
    </message>
    <message>
        <source>{n} lacks {piece}</source>
        <translation>bei {n} fehlt {piece}</translation>
    </message>
    <message>
        <source>{n} lack {piece}</source>
        <translation>bei {n} fehlt {piece}</translation>
    </message>
    <message>
        <source>Everybody has handed in all of these.</source>
        <translation>Alle haben alles davon abgegeben.</translation>
    </message>
    <message>
        <source>Not given: no length is too long for the support.</source>
        <translation>Ohne Angabe: Keine Länge ist zu groß für die Aufhängung.</translation>
    </message>
    <message>
        <source>No pairs: any two tables that are alike are asked about.</source>
        <translation>Keine Paare: Nach je zwei gleichen Tabellen wird gefragt.</translation>
    </message>
    <message>
        <source>Without a first day nothing is too early.</source>
        <translation>Ohne ersten Tag ist nichts zu früh.</translation>
    </message>
    <message>
        <source>Without a last day nothing is late.</source>
        <translation>Ohne letzten Tag ist nichts verspätet.</translation>
    </message>
    <message>
        <source>Lateness costs nothing.</source>
        <translation>Verspätung kostet nichts.</translation>
    </message>
    <message>
        <source>Nobody loses more than {marks}.</source>
        <translation>Niemand verliert mehr als {marks}.</translation>
    </message>
    <message>
        <source>Every day late counts.</source>
        <translation>Jeder Tag Verspätung zählt.</translation>
    </message>
    <message>
        <source>Marks alone: no grades go out.</source>
        <translation>Nur Punkte: Hinaus gehen keine Noten.</translation>
    </message>
    <message>
        <source>{grade} from {n:g}</source>
        <translation>{grade} ab {n:g}</translation>
    </message>
    <message>
        <source>Counts once the latitude is given.</source>
        <translation>Zählt, sobald die Breite angegeben ist.</translation>
    </message>
    <message>
        <source>Not given: g is taken for 0 to 500 m.</source>
        <translation>Ohne Angabe: g gilt für 0 bis 500 m.</translation>
    </message>
    <message>
        <source>{n} does not say and takes this count</source>
        <translation>{n} sagt nichts und übernimmt diese Anzahl</translation>
    </message>
    <message>
        <source>{n} do not say and take this count</source>
        <translation>{n} sagen nichts und übernehmen diese Anzahl</translation>
    </message>
    <message>
        <source>1 in {n}</source>
        <translation>1 von {n}</translation>
    </message>
    <message>
        <source>A rubric&apos;s name is made of letters, digits, _ and -.</source>
        <translation>Der Name eines Rasters besteht aus Buchstaben, Ziffern, _ und -.</translation>
    </message>
    <message>
        <source>brief.toml is the brief; choose another name for the rubric.</source>
        <translation>brief.toml ist der Auftrag; bitte für das Raster einen anderen Namen wählen.</translation>
    </message>
    <message>
        <source>The rubrics that come along stay as they are; choose a class folder.</source>
        <translation>Die mitgelieferten Raster bleiben, wie sie sind; bitte einen Klassenordner wählen.</translation>
    </message>
    <message>
        <source>{files} changed outside Markbench since, and nothing of that may be lost: this step is not taken back. The next Undo or Redo goes on to the step beyond.</source>
        <translation>{files} wurde seither außerhalb von Markbench geändert, und davon darf nichts verloren gehen: Dieser Schritt wird nicht zurückgenommen. Das nächste Rückgängig oder Wiederherstellen geht zum Schritt dahinter.</translation>
    </message>
    <message>
        <source>{file} is out of reach; nothing was saved.</source>
        <translation>{file} ist nicht erreichbar; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{file} could not be read: {strerror}.</source>
        <translation>{file} ließ sich nicht lesen: {strerror}.</translation>
    </message>
    <message>
        <source>{file} could not be written: {strerror}.</source>
        <translation>{file} ließ sich nicht schreiben: {strerror}.</translation>
    </message>
    <message>
        <source>To turn first and second mark round needs its reason.</source>
        <translation>Erste und zweite Bewertung zu vertauschen braucht einen Grund.</translation>
    </message>
    <message>
        <source>{who} has no second mark on this learner to make the first.</source>
        <translation>{who} hat zu dieser Person keine zweite Bewertung, die zur ersten werden könnte.</translation>
    </message>
    <message>
        <source>{name} holds what this Markbench cannot use; it is kept, not used ({told}).</source>
        <translation>{name} enthält etwas, das dieses Markbench nicht verwenden kann; es bleibt erhalten und wird nicht verwendet ({told}).</translation>
    </message>
    <message>
        <source>entry {n}, {kind}</source>
        <translation>Eintrag {n}, {kind}</translation>
    </message>
    <message>
        <source>{told} and {n} more</source>
        <translation>{told} und {n} weitere</translation>
    </message>
    <message>
        <source>Nothing was written: {n} results are not what was signed ({listed}). Reopen the marks and sign again, or put the brief back as it was.</source>
        <translation>Nichts wurde geschrieben: {n} Ergebnisse sind nicht das, was unterschrieben wurde ({listed}). Bitte die Bewertung wieder öffnen und neu unterschreiben oder den Auftrag zurücksetzen, wie er war.</translation>
    </message>
    <message>
        <source>no total</source>
        <translation>keine Summe</translation>
    </message>
    <message>
        <source>{name}, {was} signed, now {now}</source>
        <translation>{name}, unterschrieben {was}, jetzt {now}</translation>
    </message>
    <message>
        <source>{id} {name}, {criterion}: the text was written for “{first}”, and “{held}” holds.</source>
        <translation>{id} {name}, {criterion}: Der Text wurde für „{first}“ geschrieben, und es gilt „{held}“.</translation>
    </message>
    <message>
        <source>There is no class folder at {folder}.</source>
        <translation>Bei {folder} ist kein Klassenordner.</translation>
    </message>
    <message>
        <source>{file} is already in the class folder and is left as it is; choose another name.</source>
        <translation>{file} liegt schon im Klassenordner und bleibt, wie es ist; bitte einen anderen Namen wählen.</translation>
    </message>
    <message>
        <source>There is no folder {parent} to write {file} into.</source>
        <translation>Es gibt keinen Ordner {parent}, in den {file} geschrieben werden könnte.</translation>
    </message>
    <message>
        <source>as {who} was earlier by the clocks of the two machines</source>
        <translation>da {who} nach den Uhren der beiden Rechner früher war</translation>
    </message>
    <message>
        <source>as {who} marked more of this learner</source>
        <translation>da {who} bei dieser Person mehr bewertet hat</translation>
    </message>
    <message>
        <source>An adjustment is adjust, remark or leave, not {choice}.</source>
        <translation>Eine Anpassung ist adjust, remark oder leave, nicht {choice}.</translation>
    </message>
    <message>
        <source>An adjustment needs its reason.</source>
        <translation>Eine Anpassung braucht einen Grund.</translation>
    </message>
    <message>
        <source>An adjustment by 0 marks is to leave the marks: choose leave.</source>
        <translation>Eine Anpassung um 0 Punkte heißt, die Punkte zu lassen: bitte lassen wählen.</translation>
    </message>
    <message>
        <source>{criterion} has no level {level}.</source>
        <translation>{criterion} hat keine Stufe {level}.</translation>
    </message>
    <message>
        <source>A final word needs its reason.</source>
        <translation>Ein letztes Wort braucht einen Grund.</translation>
    </message>
    <message>
        <source>The marks are signed off already.</source>
        <translation>Die Bewertung ist schon unterschrieben.</translation>
    </message>
    <message>
        <source>{n} of {of} learners are not fully marked: {names}.</source>
        <translation>{n} von {of} Lernenden sind nicht ganz bewertet: {names}.</translation>
    </message>
    <message>
        <source>Still open between markers: {listed}.</source>
        <translation>Zwischen den Bewertenden noch offen: {listed}.</translation>
    </message>
    <message>
        <source>The marks are not signed off; there is nothing to reopen.</source>
        <translation>Die Bewertung ist nicht unterschrieben; es gibt nichts wieder zu öffnen.</translation>
    </message>
    <message>
        <source>Reopening needs its reason.</source>
        <translation>Wieder zu öffnen braucht einen Grund.</translation>
    </message>
    <message>
        <source>There is no journal at {other}.</source>
        <translation>Bei {other} ist kein Journal.</translation>
    </message>
    <message>
        <source>Nothing was merged. This is another class, or another state: {listed}.</source>
        <translation>Nichts wurde zusammengeführt. Dies ist eine andere Klasse oder ein anderer Stand: {listed}.</translation>
    </message>
    <message>
        <source>{file} is not as it was written: {why}</source>
        <translation>{file} ist nicht, wie es geschrieben wurde: {why}</translation>
    </message>
    <message>
        <source>{kind}: {who} is not in this class list</source>
        <translation>{kind}: {who} steht nicht in dieser Klassenliste</translation>
    </message>
    <message>
        <source>the class</source>
        <translation>die Klasse</translation>
    </message>
    <message>
        <source>{kind} of {whose}: {why}</source>
        <translation>{kind} von {whose}: {why}</translation>
    </message>
    <message>
        <source>a mark for {criterion}, which this rubric does not have</source>
        <translation>Punkte für {criterion}, das es in diesem Raster nicht gibt</translation>
    </message>
    <message>
        <source>the other journal was signed off by {who}; reopen it there first</source>
        <translation>das andere Journal wurde von {who} unterschrieben; bitte zuerst dort wieder öffnen</translation>
    </message>
    <message>
        <source>There is no folder at {folder}.</source>
        <translation>Bei {folder} ist kein Ordner.</translation>
    </message>
    <message>
        <source>T² not worked out</source>
        <translation>T² nicht berechnet</translation>
    </message>
    <message>
        <source>The table ends with the times or with T, and no report is there in which T² could stand. It is T² against the length that lies on a straight line.</source>
        <translation>Die Tabelle endet mit den Zeiten oder mit T, und es gibt keinen Bericht, in dem T² stehen könnte. Auf einer Geraden liegt T² über der Länge.</translation>
    </message>
    <message>
        <source>pieces of learner {n}</source>
        <translation>Teile von Portfolio {n}</translation>
    </message>
    <message>
        <source>manifest</source>
        <translation>Inhaltsverzeichnis</translation>
    </message>
    <message>
        <source>{name} stands in it twice</source>
        <translation>{name} steht zweimal darin</translation>
    </message>
    <message>
        <source>{name} was slipped in</source>
        <translation>{name} wurde dazugelegt</translation>
    </message>
    <message>
        <source>{name} is missing</source>
        <translation>{name} fehlt</translation>
    </message>
    <message>
        <source>{file} is no moderation pack: it has no manifest.</source>
        <translation>{file} ist kein Paket für die Zweitkorrektur: Das Inhaltsverzeichnis fehlt.</translation>
    </message>
    <message>
        <source>{file} is no moderation pack.</source>
        <translation>{file} ist kein Paket für die Zweitkorrektur.</translation>
    </message>
    <message>
        <source>{file} was made by another version of Markbench (pack version {version}; this one reads {own}).</source>
        <translation>{file} stammt aus einer anderen Version von Markbench (Paketversion {version}; gelesen wird hier {own}).</translation>
    </message>
    <message>
        <source>brief</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>rubric</source>
        <translation>Raster</translation>
    </message>
    <message>
        <source>{file} was changed or damaged on its way: {wrong}.</source>
        <translation>{file} wurde unterwegs geändert oder beschädigt: {wrong}.</translation>
    </message>
    <message>
        <source>The portfolio of learner {number} cannot be read.</source>
        <translation>Die Abgabe von Person {number} lässt sich nicht lesen.</translation>
    </message>
    <message>
        <source>{file} in {pack} is not as it was packed.</source>
        <translation>{file} in {pack} ist nicht, wie es gepackt wurde.</translation>
    </message>
    <message>
        <source>{file} in {pack} is larger than any piece may be.</source>
        <translation>{file} in {pack} ist größer, als ein Stück sein darf.</translation>
    </message>
    <message>
        <source>There is no pack at {file}.</source>
        <translation>Bei {file} ist kein Paket.</translation>
    </message>
    <message>
        <source>{file} is no moderation pack, or it is damaged.</source>
        <translation>{file} ist kein Paket für die Zweitkorrektur, oder es ist beschädigt.</translation>
    </message>
    <message>
        <source>table of learner {n}</source>
        <translation>Tabelle von Portfolio {n}</translation>
    </message>
    <message>
        <source>findings of learner {n}</source>
        <translation>Befunde von Portfolio {n}</translation>
    </message>
    <message>
        <source>{file} in {pack} is missing or damaged.</source>
        <translation>{file} in {pack} fehlt oder ist beschädigt.</translation>
    </message>
    <message>
        <source>{file} in the pack cannot be read.</source>
        <translation>{file} im Paket lässt sich nicht lesen.</translation>
    </message>
    <message>
        <source>The {what} in the pack cannot be read: {why}.</source>
        <translation>Im Paket lässt sich etwas nicht lesen ({what}): {why}.</translation>
    </message>
    <message>
        <source>{name} is not as it was packed</source>
        <translation>{name} ist nicht, wie es eingepackt wurde</translation>
    </message>
    <message>
        <source>tags were left in the video ({tags})</source>
        <translation>im Video sind Metadaten geblieben ({tags})</translation>
    </message>
    <message>
        <source>its place and device tags could not be taken out ({why})</source>
        <translation>die Angaben zu Ort und Gerät ließen sich nicht entfernen ({why})</translation>
    </message>
    <message>
        <source>the video is damaged or of a kind that cannot be copied without its tags</source>
        <translation>das Video ist beschädigt oder von einer Art, die sich nicht ohne ihre Metadaten kopieren lässt</translation>
    </message>
    <message>
        <source>no words could be read in the report</source>
        <translation>im Bericht waren keine Wörter zu lesen</translation>
    </message>
    <message>
        <source>the report is not built as such a document should be</source>
        <translation>der Bericht ist nicht gebaut, wie ein solches Dokument es sein soll</translation>
    </message>
    <message>
        <source>the report cannot be read</source>
        <translation>der Bericht ist nicht lesbar</translation>
    </message>
    <message>
        <source>names cannot be taken out of a report of this kind</source>
        <translation>aus einem Bericht dieser Art lassen sich keine Namen entfernen</translation>
    </message>
    <message>
        <source>A second mark needs a name: say who is moderating.</source>
        <translation>Eine zweite Bewertung braucht einen Namen: Wer macht die Zweitkorrektur?</translation>
    </message>
    <message>
        <source>{file} belongs to another pack; move it away to begin anew.</source>
        <translation>{file} gehört zu einem anderen Paket; zum Neubeginn bitte wegschieben.</translation>
    </message>
    <message>
        <source>The first marks of learner {number} were shown; the second mark stands. Agree, adjust or ask instead.</source>
        <translation>Die ersten Bewertungen von Person {number} wurden gezeigt; die zweite steht fest. Bitte zustimmen, anpassen oder fragen.</translation>
    </message>
    <message>
        <source>The first marks of learner {number} are shown once all {of} criteria are second-marked; {done} are.</source>
        <translation>Die ersten Bewertungen von Person {number} werden gezeigt, sobald alle {of} Kriterien zweitbewertet sind; es sind {done}.</translation>
    </message>
    <message>
        <source>Look at the first marks of learner {number} first.</source>
        <translation>Bitte zuerst die ersten Bewertungen von Person {number} ansehen.</translation>
    </message>
    <message>
        <source>A moderator may agree, adjust or ask, not {action}.</source>
        <translation>In der Zweitkorrektur kann man zustimmen, anpassen oder fragen, nicht {action}.</translation>
    </message>
    <message>
        <source>An adjustment needs its reason, and a question its words.</source>
        <translation>Eine Anpassung braucht einen Grund und eine Frage ihre Worte.</translation>
    </message>
    <message>
        <source>An adjustment names its level; agreeing and asking do not.</source>
        <translation>Eine Anpassung nennt eine Stufe; Zustimmen und Fragen nennen keine.</translation>
    </message>
    <message>
        <source>Nothing was second-marked yet; there is nothing to send back.</source>
        <translation>Noch ist nichts zweitbewertet; es gibt nichts zurückzuschicken.</translation>
    </message>
    <message>
        <source>There is no learner {learner} in this pack.</source>
        <translation>In diesem Paket gibt es keine Person {learner}.</translation>
    </message>
    <message>
        <source>{file} could not be written: {told}.</source>
        <translation>{file} ließ sich nicht schreiben: {told}.</translation>
    </message>
    <message>
        <source>setup photo</source>
        <translation>Aufbaufoto</translation>
    </message>
    <message>
        <source>selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>unknown</source>
        <translation>unbekannt</translation>
    </message>
    <message>
        <source>No sample was drawn yet; draw one first.</source>
        <translation>Noch ist keine Stichprobe gezogen; bitte zuerst eine ziehen.</translation>
    </message>
    <message>
        <source>Not fully marked yet: {names}.</source>
        <translation>Noch nicht ganz bewertet: {names}.</translation>
    </message>
    <message>
        <source>Nobody is in the sample.</source>
        <translation>In der Stichprobe ist niemand.</translation>
    </message>
    <message>
        <source>nobody has said what it is</source>
        <translation>niemand hat gesagt, was es ist</translation>
    </message>
    <message>
        <source>the brief does not allow photos of learners</source>
        <translation>der Auftrag erlaubt keine Fotos von Lernenden</translation>
    </message>
    <message>
        <source>the brief does not allow written reports</source>
        <translation>der Auftrag erlaubt keine schriftlichen Berichte</translation>
    </message>
    <message>
        <source>There is nothing to keep yet.</source>
        <translation>Noch gibt es nichts zu behalten.</translation>
    </message>
    <message>
        <source>{n} characters are too many; {most} is the most.</source>
        <translation>{n} Zeichen sind zu viele; höchstens {most} sind möglich.</translation>
    </message>
    <message>
        <source>“{name}” is in the class list; a phrase goes from class to class, so leave it out.</source>
        <translation>„{name}“ steht in der Klassenliste; ein Textbaustein geht von Klasse zu Klasse, darum bitte weglassen.</translation>
    </message>
    <message>
        <source>{shown} is not known for this learner, so this cannot be said here.</source>
        <translation>{shown} ist bei dieser Person nicht bekannt; deshalb lässt sich das hier nicht sagen.</translation>
    </message>
    <message>
        <source>This key belongs to another class: it names learners not in this one.</source>
        <translation>Dieser Schlüssel gehört zu einer anderen Klasse: Er nennt Lernende, die es hier nicht gibt.</translation>
    </message>
    <message>
        <source>There is nothing in this copy that the class does not have.</source>
        <translation>In dieser Kopie ist nichts, was die Klasse nicht hat.</translation>
    </message>
    <message>
        <source>The copy cannot lie in the class folder itself.</source>
        <translation>Die Kopie kann nicht im Klassenordner selbst liegen.</translation>
    </message>
    <message>
        <source>{file} is not empty; choose a new folder for the copy.</source>
        <translation>{file} ist nicht leer; bitte für die Kopie einen neuen Ordner wählen.</translation>
    </message>
    <message>
        <source>The key must not lie in the copy: keep it elsewhere.</source>
        <translation>Der Schlüssel darf nicht in der Kopie liegen: bitte anderswo aufbewahren.</translation>
    </message>
    <message>
        <source>{file} exists already; a key is never written over.</source>
        <translation>{file} gibt es schon; ein Schlüssel wird nie überschrieben.</translation>
    </message>
    <message>
        <source>it was removed after sign-off</source>
        <translation>es wurde nach dem Abschluss entfernt</translation>
    </message>
    <message>
        <source>a report or another file in which names may stand</source>
        <translation>ein Bericht oder eine andere Datei, in der Namen stehen können</translation>
    </message>
    <message>
        <source>The copy&apos;s journal is not as it was written: {why}</source>
        <translation>Das Journal der Kopie ist nicht, wie es geschrieben wurde: {why}</translation>
    </message>
    <message>
        <source>This key belongs to another copy: it does not know its numbers.</source>
        <translation>Dieser Schlüssel gehört zu einer anderen Kopie: Er kennt ihre Nummern nicht.</translation>
    </message>
    <message>
        <source>nobody owns it yet</source>
        <translation>es gehört noch niemandem</translation>
    </message>
    <message>
        <source>it was called nobody&apos;s</source>
        <translation>es wurde niemandem zugeordnet</translation>
    </message>
    <message>
        <source>a later hand-in replaced it</source>
        <translation>eine spätere Abgabe hat es ersetzt</translation>
    </message>
    <message>
        <source>{file} is not a key that can be read.</source>
        <translation>{file} ist kein lesbarer Schlüssel.</translation>
    </message>
    <message>
        <source>The class folder has changed since this was shown; look again.</source>
        <translation>Der Klassenordner hat sich geändert, seit dies gezeigt wurde; bitte noch einmal ansehen.</translation>
    </message>
    <message>
        <source>{file} is no moderator&apos;s reply.</source>
        <translation>{file} ist keine Antwort aus der Zweitkorrektur.</translation>
    </message>
    <message>
        <source>{file} was made by another version of Markbench.</source>
        <translation>{file} stammt aus einer anderen Version von Markbench.</translation>
    </message>
    <message>
        <source>{file} was changed or damaged on its way: its digest is not its own.</source>
        <translation>{file} wurde unterwegs geändert oder beschädigt: Die Prüfsumme ist nicht die eigene.</translation>
    </message>
    <message>
        <source>{file} answers a pack that this class did not send out, or one that was changed on its way. Nothing was merged.</source>
        <translation>{file} antwortet auf ein Paket, das diese Klasse nicht verschickt hat oder das unterwegs geändert wurde. Nichts wurde zusammengeführt.</translation>
    </message>
    <message>
        <source>{file} does not say who decided what.</source>
        <translation>{file} sagt nicht, wer was entschieden hat.</translation>
    </message>
    <message>
        <source>{file} cannot be merged: {wrong}.</source>
        <translation>{file} lässt sich nicht zusammenführen: {wrong}.</translation>
    </message>
    <message>
        <source>learner {number} was not in the pack</source>
        <translation>Person {number} war nicht im Paket</translation>
    </message>
    <message>
        <source>it is not dated or explained as it should be</source>
        <translation>Datum oder Begründung fehlt</translation>
    </message>
    <message>
        <source>it is signed by somebody else</source>
        <translation>es ist von jemand anderem unterschrieben</translation>
    </message>
    <message>
        <source>{file} cannot be opened: {strerror}.</source>
        <translation>{file} lässt sich nicht öffnen: {strerror}.</translation>
    </message>
    <message>
        <source>{file} is no moderator&apos;s reply, or it is damaged.</source>
        <translation>{file} ist keine Antwort aus der Zweitkorrektur, oder sie ist beschädigt.</translation>
    </message>
    <message>
        <source>{file} is damaged: {why}.</source>
        <translation>{file} ist beschädigt: {why}.</translation>
    </message>
    <message>
        <source>there is no criterion {criterion}</source>
        <translation>es gibt kein Kriterium {criterion}</translation>
    </message>
    <message>
        <source>a reply holds no {kind}</source>
        <translation>eine Antwort enthält kein {kind}</translation>
    </message>
    <message>
        <source>entry {n}: {why}</source>
        <translation>Eintrag {n}: {why}</translation>
    </message>
    <message>
        <source>no such level of {criterion}</source>
        <translation>diese Stufe gibt es bei {criterion} nicht</translation>
    </message>
    <message>
        <source>marks where none belong</source>
        <translation>Punkte, wo keine hingehören</translation>
    </message>
    <message>
        <source>a moderator may agree, adjust or ask</source>
        <translation>in der Zweitkorrektur kann man zustimmen, anpassen oder fragen</translation>
    </message>
    <message>
        <source>its reason is missing</source>
        <translation>die Begründung fehlt</translation>
    </message>
    <message>
        <source>This copy is not as it was written: {why}</source>
        <translation>Diese Kopie ist nicht, wie sie geschrieben wurde: {why}</translation>
    </message>
    <message>
        <source>The class stands as it stood in this copy; nothing was changed.</source>
        <translation>Die Klasse steht so da wie in dieser Kopie; nichts wurde geändert.</translation>
    </message>
    <message>
        <source>A server keeps this class and the copies of it.</source>
        <translation>Diese Klasse und ihre Kopien liegen auf einem Server.</translation>
    </message>
    <message>
        <source>This copy cannot be used: {why}</source>
        <translation>Diese Kopie lässt sich nicht verwenden: {why}</translation>
    </message>
    <message>
        <source>{file} is there already; choose another name.</source>
        <translation>{file} gibt es schon; bitte einen anderen Namen wählen.</translation>
    </message>
    <message>
        <source>{title} has no level {level}; its levels are {names}.</source>
        <translation>{title} hat keine Stufe {level}; die Stufen sind {names}.</translation>
    </message>
    <message>
        <source>The rubric is not right yet: {message}.</source>
        <translation>Das Raster stimmt noch nicht: {message}.</translation>
    </message>
    <message>
        <source>The marks were signed off by {by} on {day:%d %B %Y}; reopen the class to change them.</source>
        <translation>Die Bewertung wurde am {day:%d %B %Y} von {by} unterschrieben; zum Ändern bitte wieder öffnen.</translation>
    </message>
    <message>
        <source>The last step is a signature; it changes only when you say so.</source>
        <translation>Der letzte Schritt ist eine Unterschrift; sie ändert sich nur, wenn Sie es sagen.</translation>
    </message>
    <message>
        <source>{file} was moved or deleted; nothing was saved.</source>
        <translation>{file} wurde verschoben oder gelöscht; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{name} is open for marking elsewhere ({whom}). It can be opened here for reading.</source>
        <translation>{name} ist anderswo zum Bewerten offen ({whom}). Hier lässt sich die Klasse zum Lesen öffnen.</translation>
    </message>
    <message>
        <source>it does not say by whom</source>
        <translation>von wem, steht nicht da</translation>
    </message>
    <message>
        <source>{file} could not be used: {why}.</source>
        <translation>{file} ließ sich nicht verwenden: {why}.</translation>
    </message>
    <message>
        <source>{file} could not be reached; nothing was saved ({why}).</source>
        <translation>{file} war nicht erreichbar; nichts wurde gespeichert ({why}).</translation>
    </message>
    <message>
        <source>A class cannot be kept on a {kind} server.</source>
        <translation>Auf einem Server der Art {kind} lässt sich keine Klasse führen.</translation>
    </message>
    <message>
        <source>A class is kept in a file; the address names none.</source>
        <translation>Eine Klasse wird in einer Datei geführt; die Adresse nennt keine.</translation>
    </message>
    <message>
        <source>{file} is {state}, but {n} copies of it are kept, from which it can be rebuilt.</source>
        <translation>{file} ist {state}, aber {n} Kopien sind da, aus denen sich die Datei wiederherstellen lässt.</translation>
    </message>
    <message>
        <source>{file} is {state}, but a copy of it is kept, from which it can be rebuilt.</source>
        <translation>{file} ist {state}, aber eine Kopie ist da, aus der sich die Datei wiederherstellen lässt.</translation>
    </message>
    <message>
        <source>The address of the class cannot be read.</source>
        <translation>Die Adresse der Klasse lässt sich nicht lesen.</translation>
    </message>
    <message>
        <source>A class on a PostgreSQL server needs the part of Markbench that talks to it: install &quot;markbench[server]&quot;.</source>
        <translation>Eine Klasse auf einem PostgreSQL-Server braucht den zuständigen Teil von Markbench: bitte „markbench[server]“ installieren.</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>gone</source>
        <translation>verschwunden</translation>
    </message>
    <message>
        <source>{file} is open for reading only; nothing was saved.</source>
        <translation>{file} ist nur zum Lesen offen; nichts wurde gespeichert.</translation>
    </message>
    <message>
        <source>{file} is damaged. Nothing is lost yet: it can be rebuilt from what can be read.</source>
        <translation>{file} ist beschädigt. Noch ist nichts verloren: Aus dem, was lesbar ist, lässt sich die Datei wiederherstellen.</translation>
    </message>
    <message>
        <source>Entry {at} of {file} cannot be read. Nothing is lost yet: it can be rebuilt from what can be read.</source>
        <translation>Eintrag {at} von {file} lässt sich nicht lesen. Noch ist nichts verloren: Aus dem, was lesbar ist, lässt sich die Datei wiederherstellen.</translation>
    </message>
    <message>
        <source>{file} was made by a newer Markbench (it knows {step}); this one has not touched it. Install the newer version to go on.</source>
        <translation>{file} stammt aus einem neueren Markbench (es kennt {step}); dieses hat nichts daran geändert. Zum Weitermachen bitte die neuere Version installieren.</translation>
    </message>
    <message>
        <source>{file} is a database of some other program; it was left alone.</source>
        <translation>{file} ist die Datenbank eines anderen Programms; sie blieb unberührt.</translation>
    </message>
    <message>
        <source>No decision could be read from {file} or its copies; nothing was changed.</source>
        <translation>Aus {file} und den Kopien ließ sich keine Entscheidung lesen; nichts wurde geändert.</translation>
    </message>
    <message>
        <source>“{text}”</source>
        <translation>„{text}“</translation>
    </message>
    <message>
        <source>The line gives g = {g}; local g is {local:.2f} m/s². {how_far}</source>
        <translation>Die Gerade ergibt g = {g}; das örtliche g ist {local:.2f} m/s². {how_far}</translation>
    </message>
    <message>
        <source>{file} is not a zip file that can be opened.</source>
        <translation>{file} ist keine Zip-Datei, die sich öffnen lässt.</translation>
    </message>
    <message>
        <source>it is there</source>
        <translation>vorhanden</translation>
    </message>
    <message>
        <source>not found</source>
        <translation>nicht gefunden</translation>
    </message>
    <message>
        <source>needs {fact}; {found}</source>
        <translation>nötig: {fact}; {found}</translation>
    </message>
    <message>
        <source>{fact} is not known</source>
        <translation>{fact}: nicht bekannt</translation>
    </message>
    <message>
        <source>without {fact}</source>
        <translation>{fact}: nein</translation>
    </message>
    <message>
        <source>{fact}: yes</source>
        <translation>{fact}: ja</translation>
    </message>
    <message>
        <source>{fact}: known</source>
        <translation>{fact}: bekannt</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
</context>
<context>
    <name>SettlePanel</name>
    <message>
        <source>To settle</source>
        <translation>Zu klären</translation>
    </message>
    <message>
        <source>Whose is it?</source>
        <translation>Wessen ist sie?</translation>
    </message>
    <message>
        <source>{n} more follow when these are settled.</source>
        <translation>{n} weitere folgen, wenn diese geklärt sind.</translation>
    </message>
    <message>
        <source>Set aside as nobody&apos;s</source>
        <translation>Als niemandes beiseitegelegt</translation>
    </message>
    <message>
        <source>Whose files are whose is settled when names are shown.</source>
        <translation>Wessen Dateien es sind, klärt sich, wenn die Namen sichtbar sind.</translation>
    </message>
    <message>
        <source>Every file has its owner.</source>
        <translation>Jede Datei ist zugeordnet.</translation>
    </message>
    <message>
        <source>No learner of the class list fits.</source>
        <translation>Niemand aus der Klassenliste passt.</translation>
    </message>
    <message>
        <source>{name} ({score:.0f} %)</source>
        <translation>{name} ({score:.0f} %)</translation>
    </message>
    <message>
        <source>Nobody&apos;s</source>
        <translation>Niemandem</translation>
    </message>
    <message>
        <source>Bring back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>Another learner for {file}</source>
        <translation>Andere Person für {file}</translation>
    </message>
    <message>
        <source>Another learner…</source>
        <translation>Andere Person…</translation>
    </message>
</context>
<context>
    <name>SigningPaper</name>
    <message>
        <source>Sign-off and record</source>
        <translation>Abschluss und Protokoll</translation>
    </message>
    <message>
        <source>A note to the signature (may stay empty)</source>
        <translation>Anmerkung zur Unterschrift (darf leer bleiben)</translation>
    </message>
    <message>
        <source>Sign although questions are open</source>
        <translation>Trotz offener Fragen unterschreiben</translation>
    </message>
    <message>
        <source>Sign off the marks</source>
        <translation>Bewertung unterschreiben</translation>
    </message>
    <message>
        <source>Reason for reopening</source>
        <translation>Grund für das Wiederöffnen</translation>
    </message>
    <message>
        <source>Reopen the marks</source>
        <translation>Bewertung wieder öffnen</translation>
    </message>
    <message>
        <source>Write the record…</source>
        <translation>Protokoll schreiben…</translation>
    </message>
    <message>
        <source>✓ signed off by {who}, {when}</source>
        <translation>✓ unterschrieben: {who}, {when}</translation>
    </message>
    <message>
        <source>Moved since: {who}</source>
        <translation>Seither geändert: {who}</translation>
    </message>
    <message>
        <source>1 question is open between the markers.</source>
        <translation>Zwischen den Bewertenden ist 1 Frage offen.</translation>
    </message>
    <message>
        <source>{n} questions are open between the markers.</source>
        <translation>{n} Fragen sind zwischen den Korrekturen offen.</translation>
    </message>
    <message>
        <source>The marks can be signed. Look first at:</source>
        <translation>Die Bewertung kann unterschrieben werden. Vorher ansehen:</translation>
    </message>
    <message>
        <source>Nothing stands in the way of signing.</source>
        <translation>Der Unterschrift steht nichts im Weg.</translation>
    </message>
    <message>
        <source>≠ Work changed since it was marked:</source>
        <translation>≠ Arbeit seit der Bewertung geändert:</translation>
    </message>
    <message>
        <source>Write the record</source>
        <translation>Protokoll schreiben</translation>
    </message>
    <message>
        <source>Writing the record…</source>
        <translation>Das Protokoll wird geschrieben…</translation>
    </message>
    <message>
        <source>✓ written: {file}</source>
        <translation>✓ geschrieben: {file}</translation>
    </message>
</context>
<context>
    <name>StartPage</name>
    <message>
        <source>Choose a class</source>
        <translation>Klasse wählen</translation>
    </message>
    <message>
        <source>Choose the folder that holds what the class handed in: a folder for each learner, single files, zip files, or one sheet for all. A class list and a brief may lie in it too; without them, each sub-folder is a learner.

Nothing in the folder is changed. Marks and notes are kept in a file of their own, class.markbench, beside the work.</source>
        <translation>Wählen Sie den Ordner mit den Abgaben der Klasse: ein Ordner je Person, einzelne Dateien, Zip-Dateien oder eine Tabelle für alle. Auch Klassenliste und Auftrag dürfen darin liegen; ohne sie gilt jeder Unterordner als eine Person.

Im Ordner wird nichts verändert. Bewertungen und Notizen stehen in einer eigenen Datei, class.markbench, neben den Abgaben.</translation>
    </message>
    <message>
        <source>Choose a folder…</source>
        <translation>Ordner wählen…</translation>
    </message>
    <message>
        <source>Rebuild it from its copies</source>
        <translation>Aus den Kopien wiederherstellen</translation>
    </message>
    <message>
        <source>Begin a new class…</source>
        <translation>Neue Klasse anlegen…</translation>
    </message>
    <message>
        <source>Open a moderation pack…</source>
        <translation>Zweitkorrektur-Paket öffnen…</translation>
    </message>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Open {name} again</source>
        <translation>{name} wieder öffnen</translation>
    </message>
    <message>
        <source>Reading {name}</source>
        <translation>{name} wird gelesen</translation>
    </message>
    <message>
        <source>Looking through the folder</source>
        <translation>Der Ordner wird durchgesehen</translation>
    </message>
    <message>
        <source>This moderation pack could not be opened</source>
        <translation>Dieses Zweitkorrektur-Paket ließ sich nicht öffnen</translation>
    </message>
    <message>
        <source>This class could not be opened</source>
        <translation>Diese Klasse ließ sich nicht öffnen</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Noch einmal versuchen</translation>
    </message>
    <message>
        <source>Choose another folder…</source>
        <translation>Anderen Ordner wählen…</translation>
    </message>
</context>
<context>
    <name>StepBar</name>
    <message>
        <source>Sample: none yet</source>
        <translation>Stichprobe: noch keine</translation>
    </message>
    <message>
        <source>✓ Sample: {n}</source>
        <translation>✓ Stichprobe: {n}</translation>
    </message>
    <message>
        <source>Open: {n}</source>
        <translation>Offen: {n}</translation>
    </message>
    <message>
        <source>Open: nothing</source>
        <translation>Offen: nichts</translation>
    </message>
    <message>
        <source>Second-marked: {n}</source>
        <translation>Zweitkorrigiert: {n}</translation>
    </message>
    <message>
        <source>✓ Adjustment</source>
        <translation>✓ Anpassung</translation>
    </message>
    <message>
        <source>Adjustment</source>
        <translation>Anpassung</translation>
    </message>
    <message>
        <source>Boundaries</source>
        <translation>Notengrenzen</translation>
    </message>
    <message>
        <source>Sign-off</source>
        <translation>Abschluss</translation>
    </message>
    <message>
        <source>✓ Signed off</source>
        <translation>✓ Unterschrieben</translation>
    </message>
    <message>
        <source>Send out</source>
        <translation>Ausgeben</translation>
    </message>
</context>
<context>
    <name>StripModel</name>
    <message>
        <source>marked: {level}</source>
        <translation>bewertet: {level}</translation>
    </message>
    <message>
        <source>draft: {level}</source>
        <translation>Entwurf: {level}</translation>
    </message>
    <message>
        <source>for your eye</source>
        <translation>selbst ansehen</translation>
    </message>
</context>
<context>
    <name>Strips</name>
    <message>
        <source>T² against L</source>
        <translation>T² über L</translation>
    </message>
    <message>
        <source>L / cm, times / s</source>
        <translation>L / cm, Zeiten / s</translation>
    </message>
    <message>
        <source>key {n}</source>
        <translation>Taste {n}</translation>
    </message>
    <message>
        <source>and {n} more</source>
        <translation>und {n} weitere</translation>
    </message>
</context>
<context>
    <name>SwingTrace</name>
    <message>
        <source>The bob&apos;s displacement as measured; a number where each swing ends</source>
        <translation>Gemessene Auslenkung des Pendelkörpers; eine Zahl am Ende jeder Schwingung</translation>
    </message>
    <message>
        <source>Trace of the swing, {n} swings marked</source>
        <translation>Verlauf der Schwingung, {n} Schwingungen markiert</translation>
    </message>
</context>
<context>
    <name>Thumb</name>
    <message>
        <source>Judge this piece</source>
        <translation>Dieses Stück beurteilen</translation>
    </message>
    <message>
        <source>Set-up</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>Selfie</source>
        <translation>Selfie</translation>
    </message>
    <message>
        <source>{c}: missing</source>
        <translation>{c}: fehlt</translation>
    </message>
    <message>
        <source>Judge: {piece}</source>
        <translation>Beurteilen: {piece}</translation>
    </message>
    <message>
        <source>{c}: not in the pack</source>
        <translation>{c}: nicht im Paket</translation>
    </message>
    <message>
        <source>{c}: removed</source>
        <translation>{c}: entfernt</translation>
    </message>
    <message>
        <source>Shows: {kind}</source>
        <translation>Zeigt: {kind}</translation>
    </message>
</context>
<context>
    <name>TypedTable</name>
    <message>
        <source>Readings to type</source>
        <translation>Einzutippende Messwerte</translation>
    </message>
    <message>
        <source>Use what is typed here</source>
        <translation>Getippte Werte verwenden</translation>
    </message>
    <message>
        <source>Back to the learner&apos;s file</source>
        <translation>Zurück zur Datei der Person</translation>
    </message>
    <message>
        <source>Or type the readings in</source>
        <translation>Oder Messwerte eintippen</translation>
    </message>
    <message>
        <source>Type the readings in</source>
        <translation>Messwerte eintippen</translation>
    </message>
    <message>
        <source>Row {r} has no length.</source>
        <translation>Zeile {r} hat keine Länge.</translation>
    </message>
    <message>
        <source>Row {r}, {c}: “{t}” is not a number.</source>
        <translation>Zeile {r}, {c}: „{t}“ ist keine Zahl.</translation>
    </message>
    <message>
        <source>Nothing is typed yet: each row needs a length and a timing.</source>
        <translation>Noch ist nichts eingetippt: Jede Zeile braucht eine Länge und eine Zeit.</translation>
    </message>
</context>
<context>
    <name>Window</name>
    <message>
        <source>✓ written to {folder}; {n} texts not sent: {first}</source>
        <translation>✓ geschrieben nach {folder}; {n} Texte nicht hinausgegeben: {first}</translation>
    </message>
    <message>
        <source>✓ written to {folder}</source>
        <translation>✓ geschrieben nach {folder}</translation>
    </message>
    <message>
        <source>Choose a class folder</source>
        <translation>Klassenordner wählen</translation>
    </message>
    <message>
        <source>read only</source>
        <translation>nur lesen</translation>
    </message>
    <message>
        <source>Writing the workbook…</source>
        <translation>Die Arbeitsmappe wird geschrieben…</translation>
    </message>
    <message>
        <source>{n} of {of}</source>
        <translation>{n} von {of}</translation>
    </message>
    <message>
        <source>{n} of {of} shown ({all} in the class)</source>
        <translation>{n} von {of} gezeigten ({all} in der Klasse)</translation>
    </message>
    <message>
        <source>That was the first one.</source>
        <translation>Das war die erste Person.</translation>
    </message>
    <message>
        <source>That was the last one.</source>
        <translation>Das war die letzte Person.</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Everything that can be done (F1)</source>
        <translation>Alles, was möglich ist (F1)</translation>
    </message>
    <message>
        <source>Light or dark</source>
        <translation>Hell oder dunkel</translation>
    </message>
    <message>
        <source>✓ saved {time}</source>
        <translation>✓ gespeichert {time}</translation>
    </message>
    <message>
        <source>✓ as before: {files}</source>
        <translation>✓ wie zuvor: {files}</translation>
    </message>
</context>
<context>
    <name>_CellDelegate</name>
    <message>
        <source>Corrected reading</source>
        <translation>Berichtigter Messwert</translation>
    </message>
    <message>
        <source>As the learner would write it; empty restores the original</source>
        <translation>Wie die Person es schriebe; leer stellt das Original wieder her</translation>
    </message>
</context>
<context>
    <name>_Row</name>
    <message>
        <source>Show</source>
        <extracomment>What agreeing brings about, once agreed.</extracomment>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Show in the graph how the readings would lie</source>
        <translation>Im Graphen zeigen, wie die Messwerte lägen</translation>
    </message>
</context>
</TS>
