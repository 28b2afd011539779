<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
<name>desktop</name>
<message>
<source>Something went wrong in the program; nothing is lost. Try again, or see the log.</source>
<translation>Im Programm ist etwas schiefgegangen; es ist nichts verloren. Versuchen Sie es noch einmal oder sehen Sie ins Protokoll.</translation>
</message>
<message>
<source>Firstslip ended badly last time. Your work is kept; the log ({keys}) may tell why.</source>
<translation>Firstslip wurde beim letzten Mal unsanft beendet. Ihre Arbeit ist gesichert; das Protokoll ({keys}) verrät vielleicht den Grund.</translation>
</message>
<message>
<source>Closing the set</source>
<translation>Stapel wird geschlossen</translation>
</message>
<message>
<source>Keeping the set</source>
<translation>Stapel wird gesichert</translation>
</message>
<message>
<source>Claimed for all values</source>
<translation>Behauptet für alle Werte</translation>
</message>
<message>
<source>Left, multiplied out</source>
<translation>Links, ausmultipliziert</translation>
</message>
<message>
<source>Right, multiplied out</source>
<translation>Rechts, ausmultipliziert</translation>
</message>
<message>
<source>Only on the left</source>
<translation>Nur links</translation>
</message>
<message>
<source>Only on the right</source>
<translation>Nur rechts</translation>
</message>
<message>
<source>Fails at</source>
<translation>Falsch bei</translation>
</message>
<message>
<source>Why</source>
<translation>Warum</translation>
</message>
<message>
<source>Line {number}: {word}</source>
<translation>Zeile {number}: {word}</translation>
</message>
<message>
<source>The checker said</source>
<translation>Die Prüfung sagte</translation>
</message>
<message>
<source>From line {}</source>
<translation>Aus Zeile {}</translation>
</message>
<message>
<source>Line as read</source>
<translation>Gelesen als</translation>
</message>
<message>
<source>Or line {number} says</source>
<translation>Oder Zeile {number} lautet</translation>
</message>
<message>
<source>Line as written</source>
<translation>Im Heft steht</translation>
</message>
<message>
<source>Hint {number}</source>
<translation>Hinweis {number}</translation>
</message>
<message>
<source>Factors</source>
<translation>Faktoren</translation>
</message>
<message>
<source>and</source>
<translation>und</translation>
</message>
<message>
<source>Written</source>
<translation>Geschrieben</translation>
</message>
<message>
<source>Missing</source>
<translation>Es fehlt</translation>
</message>
<message>
<source>Should be</source>
<translation>Richtig wäre</translation>
</message>
<message>
<source>Line put right</source>
<translation>Zeile berichtigt</translation>
</message>
<message>
<source>The check broke off. Change or confirm a line to check again.</source>
<translation>Die Prüfung ist abgebrochen. Ändern oder bestätigen Sie eine Zeile, dann wird neu geprüft.</translation>
</message>
<message>
<source>The check took too long and was stopped. Shorten the longest line and try again.</source>
<translation>Die Prüfung dauerte zu lange und wurde angehalten. Kürzen Sie die längste Zeile und versuchen Sie es noch einmal.</translation>
</message>
<message>
<source>The check failed; nothing is lost. Change a line to check again, or see the log.</source>
<translation>Die Prüfung ist gescheitert; es ist nichts verloren. Ändern Sie eine Zeile, dann wird neu geprüft, oder sehen Sie ins Protokoll.</translation>
</message>
<message>
<source>This line is no equation, so it claims nothing for all values.</source>
<translation>Diese Zeile ist keine Gleichung; sie behauptet also nichts für alle Werte.</translation>
</message>
<message>
<source>Checking the claim</source>
<translation>Behauptung wird geprüft</translation>
</message>
<message>
<source>The set at a glance</source>
<translation>Der Stapel im Überblick</translation>
</message>
<message>
<source>Lines confirmed</source>
<translation>Bestätigte Zeilen</translation>
</message>
<message>
<source>Candidate</source>
<translation>Kennnummer</translation>
</message>
<message>
<source>Page</source>
<translation>Seite</translation>
</message>
<message>
<source>Confirmed</source>
<translation>Bestätigt</translation>
</message>
<message>
<source>Doubtful</source>
<translation>Unsicher</translation>
</message>
<message>
<source>Marks</source>
<translation>Punkte</translation>
</message>
<message>
<source>First slips</source>
<translation>Erste Fehler</translation>
</message>
<message>
<source>Pages</source>
<translation>Seiten</translation>
</message>
<message>
<source>Line</source>
<translation>Zeile</translation>
</message>
<message>
<source>Reading</source>
<translation>Gelesen</translation>
</message>
<message>
<source>How sure</source>
<translation>Sicherheit</translation>
</message>
<message>
<source>Doubtful lines</source>
<translation>Unsichere Zeilen</translation>
</message>
<message>
<source>Slip</source>
<translation>Fehler</translation>
</message>
<message>
<source>How often</source>
<translation>Wie oft</translation>
</message>
<message>
<source>Candidates</source>
<translation>Kennnummern</translation>
</message>
<message>
<source>Slips by kind</source>
<translation>Fehler nach Art</translation>
</message>
<message>
<source>Parts of the overview</source>
<translation>Teile des Überblicks</translation>
</message>
<message>
<source>&amp;Pages</source>
<translation>&amp;Seiten</translation>
</message>
<message>
<source>&amp;Doubtful lines</source>
<translation>&amp;Unsichere Zeilen</translation>
</message>
<message>
<source>&amp;Slips</source>
<translation>&amp;Fehler</translation>
</message>
<message>
<source>Enter shows the page or line on the desk. F2 changes a candidate's number.</source>
<translation>Eingabe zeigt die Seite oder Zeile auf dem Tisch. F2 ändert eine Kennnummer.</translation>
</message>
<message>
<source>Save as &amp;CSV…</source>
<translation>Als &amp;CSV speichern …</translation>
</message>
<message>
<source>Close</source>
<translation>Schließen</translation>
</message>
<message>
<source>{confirmed} of {lines} lines confirmed, {doubtful} doubtful. Pages: {pages}. First slips: {slips}.</source>
<translation>{confirmed} von {lines} Zeilen bestätigt, {doubtful} unsicher. Seiten: {pages}. Erste Fehler: {slips}.</translation>
</message>
<message>
<source>Marks: {given} of {out_of}.</source>
<translation>Punkte: {given} von {out_of}.</translation>
</message>
<message>
<source>not read</source>
<translation>nicht gelesen</translation>
</message>
<message>
<source>Save the set as CSV</source>
<translation>Stapel als CSV speichern</translation>
</message>
<message>
<source>{name} could not be saved there. Choose another folder, or make room on the disk.</source>
<translation>{name} konnte dort nicht gespeichert werden. Wählen Sie einen anderen Ordner oder schaffen Sie Platz auf dem Datenträger.</translation>
</message>
<message>
<source>line {number}: {slip}</source>
<translation>Zeile {number}: {slip}</translation>
</message>
<message>
<source>check the reading</source>
<translation>Gelesenes prüfen</translation>
</message>
<message>
<source>none</source>
<translation>keiner</translation>
</message>
<message>
<source>not checked</source>
<translation>nicht geprüft</translation>
</message>
<message>
<source>A candidate number has letters and digits only, twelve at most.</source>
<translation>Eine Kennnummer besteht nur aus Buchstaben und Ziffern, höchstens zwölf.</translation>
</message>
<message>
<source>The lines changed meanwhile. Try again now.</source>
<translation>Die Zeilen haben sich inzwischen geändert. Versuchen Sie es jetzt noch einmal.</translation>
</message>
<message>
<source>Split line</source>
<translation>Zeile teilen</translation>
</message>
<message>
<source>Join lines</source>
<translation>Zeilen verbinden</translation>
</message>
<message>
<source>Add line</source>
<translation>Zeile hinzufügen</translation>
</message>
<message>
<source>Redraw line</source>
<translation>Zeile neu umranden</translation>
</message>
<message>
<source>Remove line</source>
<translation>Zeile entfernen</translation>
</message>
<message>
<source>Move line</source>
<translation>Zeile verschieben</translation>
</message>
<message>
<source>Starting</source>
<translation>Start</translation>
</message>
<message>
<source>Checking</source>
<translation>Wird geprüft</translation>
</message>
<message>
<source>Reading the changed lines</source>
<translation>Geänderte Zeilen werden gelesen</translation>
</message>
<message>
<source>unread</source>
<translation>ungelesen</translation>
</message>
<message>
<source>doubtful</source>
<translation>unsicher</translation>
</message>
<message>
<source>read</source>
<translation>gelesen</translation>
</message>
<message>
<source>confirmed</source>
<translation>bestätigt</translation>
</message>
<message>
<source>Reads worked algebra from a photo, a PDF or a pen drawing, finds the first line that does not follow, says which term is wrong and what it should be, and follows the carried error through the later lines.</source>
<translation>Liest Termumformungen und Gleichungen von einem Foto, einer PDF-Datei oder einer Stiftzeichnung, findet die erste Zeile, die nicht folgt, sagt, welches Glied falsch ist und wie es lauten müsste, und verfolgt den Folgefehler durch die späteren Zeilen.</translation>
</message>
<message>
<source>MIT licence. The reader's weights carry a licence of their own, named in their model card.</source>
<translation>MIT-Lizenz. Die Gewichte der Schrifterkennung haben eine eigene Lizenz, die in ihrer Modellkarte steht.</translation>
</message>
<message>
<source>Type a working</source>
<translation>Rechnung eintippen</translation>
</message>
<message>
<source>One written line to a line, as LaTeX. An empty line starts a new working.</source>
<translation>Je geschriebene Zeile eine Zeile LaTeX. Eine Leerzeile beginnt eine neue Rechnung.</translation>
</message>
<message>
<source>Lines of the working</source>
<translation>Zeilen der Rechnung</translation>
</message>
<message>
<source>Check (Ctrl+Enter)</source>
<translation>Prüfen (Strg+Eingabe)</translation>
</message>
<message>
<source>Keys</source>
<translation>Tasten</translation>
</message>
<message>
<source>About Firstslip</source>
<translation>Über Firstslip</translation>
</message>
<message>
<source>development copy</source>
<translation>Entwicklungsfassung</translation>
</message>
<message>
<source>It works offline: no page leaves this computer.</source>
<translation>Es arbeitet ohne Netz: keine Seite verlässt diesen Rechner.</translation>
</message>
<message>
<source> or </source>
<translation> oder </translation>
</message>
<message>
<source>Pages (*.jpg *.jpeg *.png *.tif *.tiff *.webp *.bmp *.pdf *.inkml *.firstslip);;All files (*)</source>
<translation>Seiten (*.jpg *.jpeg *.png *.tif *.tiff *.webp *.bmp *.pdf *.inkml *.firstslip);;Alle Dateien (*)</translation>
</message>
<message>
<source>Open a set by itself, and then the pages that belong in it.</source>
<translation>Öffnen Sie erst den Stapel allein und dann die Seiten, die hineingehören.</translation>
</message>
<message>
<source>Open pages</source>
<translation>Seiten öffnen</translation>
</message>
<message>
<source>There is no picture, file or text on the clipboard. Copy one first, then paste again.</source>
<translation>In der Zwischenablage ist kein Bild, keine Datei und kein Text. Kopieren Sie erst etwas und fügen Sie es dann ein.</translation>
</message>
<message>
<source>Saved {name}.</source>
<translation>{name} gespeichert.</translation>
</message>
<message>
<source>The marked picture is on the clipboard.</source>
<translation>Das Bild mit Korrektur ist in der Zwischenablage.</translation>
</message>
<message>
<source>Save marked picture as {kind}</source>
<translation>Bild mit Korrektur als {kind} speichern</translation>
</message>
<message>
<source>Pasted picture</source>
<translation>Eingefügtes Bild</translation>
</message>
<message>
<source>Pasted picture {pasted}</source>
<translation>Eingefügtes Bild {pasted}</translation>
</message>
<message>
<source>Reading {name}</source>
<translation>{name} wird gelesen</translation>
</message>
<message>
<source>{name} failed; nothing is lost. Try again, or see the log.</source>
<translation>{name}: gescheitert; es ist nichts verloren. Versuchen Sie es noch einmal oder sehen Sie ins Protokoll.</translation>
</message>
<message>
<source>fraction</source>
<translation>Bruch</translation>
</message>
<message>
<source>power</source>
<translation>Potenz</translation>
</message>
<message>
<source>squared</source>
<translation>Quadrat</translation>
</message>
<message>
<source>root</source>
<translation>Wurzel</translation>
</message>
<message>
<source>nth root</source>
<translation>n-te Wurzel</translation>
</message>
<message>
<source>index</source>
<translation>Index</translation>
</message>
<message>
<source>brackets</source>
<translation>Klammern</translation>
</message>
<message>
<source>plus or minus</source>
<translation>plus oder minus</translation>
</message>
<message>
<source>times</source>
<translation>mal</translation>
</message>
<message>
<source>divided by</source>
<translation>geteilt durch</translation>
</message>
<message>
<source>dot</source>
<translation>Malpunkt</translation>
</message>
<message>
<source>equals</source>
<translation>gleich</translation>
</message>
<message>
<source>not equal</source>
<translation>ungleich</translation>
</message>
<message>
<source>less than or equal</source>
<translation>kleiner oder gleich</translation>
</message>
<message>
<source>greater than or equal</source>
<translation>größer oder gleich</translation>
</message>
<message>
<source>identical to</source>
<translation>identisch gleich</translation>
</message>
<message>
<source>implies</source>
<translation>daraus folgt</translation>
</message>
<message>
<source>pi</source>
<translation>Pi</translation>
</message>
<message>
<source>theta</source>
<translation>Theta</translation>
</message>
<message>
<source>alpha</source>
<translation>Alpha</translation>
</message>
<message>
<source>beta</source>
<translation>Beta</translation>
</message>
<message>
<source>lambda</source>
<translation>Lambda</translation>
</message>
<message>
<source>Keypad</source>
<translation>Tastenfeld</translation>
</message>
<message>
<source>Confirm reading</source>
<translation>Gelesenes bestätigen</translation>
</message>
<message>
<source>Confirm all that are sure</source>
<translation>Alle sicheren bestätigen</translation>
</message>
<message>
<source>Leave line out</source>
<translation>Zeile auslassen</translation>
</message>
<message>
<source>Take line in</source>
<translation>Zeile aufnehmen</translation>
</message>
<message>
<source>Change where a working starts</source>
<translation>Anfang einer Rechnung ändern</translation>
</message>
<message>
<source>This line was typed; change its text instead (F2).</source>
<translation>Diese Zeile wurde getippt; ändern Sie ihren Text (F2).</translation>
</message>
<message>
<source>LaTeX of the line</source>
<translation>LaTeX der Zeile</translation>
</message>
<message>
<source>What does the line say? LaTeX, for example 2x^2-3x=5</source>
<translation>Wie lautet die Zeile? LaTeX, zum Beispiel 2x^2-3x=5</translation>
</message>
<message>
<source>Keys for fractions, powers, roots and signs (Ctrl+K)</source>
<translation>Tasten für Brüche, Potenzen, Wurzeln und Zeichen (Strg+K)</translation>
</message>
<message>
<source>Confirm (Enter)</source>
<translation>Bestätigen (Eingabe)</translation>
</message>
<message>
<source>Type what the line says, or leave the line out (Ctrl+L).</source>
<translation>Tippen Sie, wie die Zeile lautet, oder lassen Sie die Zeile aus (Strg+L).</translation>
</message>
<message>
<source>{problem} Press Enter again to keep it as it is.</source>
<translation>{problem} Nochmals Eingabe drücken, um es so zu lassen.</translation>
</message>
<message>
<source>Choose a line to see its readings.</source>
<translation>Wählen Sie eine Zeile, um ihre Lesarten zu sehen.</translation>
</message>
<message>
<source>could not be read. Type what it says.</source>
<translation>konnte nicht gelesen werden. Tippen Sie, wie sie lautet.</translation>
</message>
<message>
<source>is doubtful. Which reading is right?</source>
<translation>ist unsicher. Welche Lesart stimmt?</translation>
</message>
<message>
<source>as it was read. Enter confirms it.</source>
<translation>wie gelesen. Eingabe bestätigt sie.</translation>
</message>
<message>
<source>is confirmed.</source>
<translation>ist bestätigt.</translation>
</message>
<message>
<source>Line {number} {words}</source>
<translation>Zeile {number} {words}</translation>
</message>
<message>
<source>Reading {number}: {latex}, {chances}</source>
<translation>Lesart {number}: {latex}, {chances}</translation>
</message>
<message>
<source>Take this reading (key {number})</source>
<translation>Diese Lesart nehmen (Taste {number})</translation>
</message>
<message>
<source>left out</source>
<translation>ausgelassen</translation>
</message>
<message>
<source>not read: type what it says</source>
<translation>nicht gelesen: tippen Sie, wie sie lautet</translation>
</message>
<message>
<source>struck out</source>
<translation>durchgestrichen</translation>
</message>
<message>
<source>doubtful reading ({probability})</source>
<translation>unsicher gelesen ({probability})</translation>
</message>
<message>
<source>Lines</source>
<translation>Zeilen</translation>
</message>
<message>
<source>Line {number}</source>
<translation>Zeile {number}</translation>
</message>
<message>
<source>Write marks as M1, A1 or B1, with 0 for a mark that is not given (A0), and A1/2 for one of two.</source>
<translation>Schreiben Sie Punkte als M1, A1 oder B1, mit 0 für einen nicht gegebenen Punkt (A0) und A1/2 für einen von zweien.</translation>
</message>
<message>
<source>Line {number}: {word}. {line_reason}</source>
<translation>Zeile {number}: {word}. {line_reason}</translation>
</message>
<message>
<source>Suggestion: the teacher decides</source>
<translation>Vorschlag: die Lehrkraft entscheidet</translation>
</message>
<message>
<source>The picture could not be written as {kind}.</source>
<translation>Das Bild konnte nicht als {kind} geschrieben werden.</translation>
</message>
<message>
<source>Answer</source>
<translation>Ergebnis</translation>
</message>
<message>
<source>Not checked yet.</source>
<translation>Noch nicht geprüft.</translation>
</message>
<message>
<source>should be </source>
<translation>richtig: </translation>
</message>
<message>
<source>New pen page</source>
<translation>Neue Stiftseite</translation>
</message>
<message>
<source>Save PNG</source>
<translation>PNG speichern</translation>
</message>
<message>
<source>Save PDF</source>
<translation>PDF speichern</translation>
</message>
<message>
<source>Hints only</source>
<translation>Nur Hinweise</translation>
</message>
<message>
<source>&amp;File</source>
<translation>&amp;Datei</translation>
</message>
<message>
<source>&amp;Line</source>
<translation>&amp;Zeile</translation>
</message>
<message>
<source>&amp;Pen</source>
<translation>&amp;Stift</translation>
</message>
<message>
<source>&amp;Check</source>
<translation>&amp;Prüfen</translation>
</message>
<message>
<source>&amp;View</source>
<translation>&amp;Ansicht</translation>
</message>
<message>
<source>&amp;Help</source>
<translation>&amp;Hilfe</translation>
</message>
<message>
<source>&amp;Edit</source>
<translation>&amp;Bearbeiten</translation>
</message>
<message>
<source>&amp;Undo</source>
<translation>&amp;Rückgängig:</translation>
</message>
<message>
<source>&amp;Redo</source>
<translation>&amp;Wiederholen:</translation>
</message>
<message>
<source>Tools</source>
<translation>Werkzeuge</translation>
</message>
<message>
<source>Confirm all that are sure ({count})</source>
<translation>Alle sicheren bestätigen ({count})</translation>
</message>
<message>
<source>Next doubtful line ({count})</source>
<translation>Nächste unsichere Zeile ({count})</translation>
</message>
<message>
<source>&amp;Open pages…</source>
<translation>Seiten öffnen …</translation>
</message>
<message>
<source>&amp;Paste picture or lines</source>
<translation>Bild oder Zeilen &amp;einfügen</translation>
</message>
<message>
<source>New page for the &amp;pen</source>
<translation>Neue Seite für den S&amp;tift</translation>
</message>
<message>
<source>&amp;Type a working…</source>
<translation>Rechnung eint&amp;ippen …</translation>
</message>
<message>
<source>Save marked picture as P&amp;NG…</source>
<translation>Bild mit Korrektur als P&amp;NG speichern …</translation>
</message>
<message>
<source>Save marked picture as P&amp;DF…</source>
<translation>Bild mit Korrektur als P&amp;DF speichern …</translation>
</message>
<message>
<source>&amp;Copy marked picture</source>
<translation>Bild mit Korrektur &amp;kopieren</translation>
</message>
<message>
<source>Take page &amp;off the desk</source>
<translation>Seite &amp;vom Tisch nehmen</translation>
</message>
<message>
<source>&amp;Quit</source>
<translation>&amp;Beenden</translation>
</message>
<message>
<source>&amp;Confirm and go on</source>
<translation>&amp;Bestätigen und weiter</translation>
</message>
<message>
<source>Confirm the reading that is shown and go to the next doubtful line</source>
<translation>Die gezeigte Lesart bestätigen und zur nächsten unsicheren Zeile gehen</translation>
</message>
<message>
<source>Take reading &amp;{number} and go on</source>
<translation>Lesart &amp;{number} nehmen und weiter</translation>
</message>
<message>
<source>&amp;Edit reading</source>
<translation>Lesart b&amp;earbeiten</translation>
</message>
<message>
<source>Type the reading; the first doubtful symbol is selected</source>
<translation>Lesart tippen; das erste unsichere Zeichen ist ausgewählt</translation>
</message>
<message>
<source>&amp;What else may the doubtful symbol be?</source>
<translation>&amp;Was könnte das unsichere Zeichen noch sein?</translation>
</message>
<message>
<source>&amp;Keypad, or hide it</source>
<translation>&amp;Tastenfeld ein oder aus</translation>
</message>
<message>
<source>Confirm &amp;all that are sure</source>
<translation>&amp;Alle sicheren bestätigen</translation>
</message>
<message>
<source>Next &amp;doubtful line</source>
<translation>&amp;Nächste unsichere Zeile</translation>
</message>
<message>
<source>Line &amp;below</source>
<translation>Zeile da&amp;runter</translation>
</message>
<message>
<source>Line a&amp;bove</source>
<translation>Zeile da&amp;rüber</translation>
</message>
<message>
<source>&amp;Leave line out, or take it in</source>
<translation>Zeile aus&amp;lassen oder aufnehmen</translation>
</message>
<message>
<source>Split line (draw the cut)</source>
<translation>Zeile teilen (Schnitt zeichnen)</translation>
</message>
<message>
<source>Join with the line below</source>
<translation>Mit der Zeile darunter verbinden</translation>
</message>
<message>
<source>Or click another line on the page with Shift</source>
<translation>Oder eine andere Zeile der Seite mit Umschalt anklicken</translation>
</message>
<message>
<source>Add a line (draw a box)</source>
<translation>Zeile hinzufügen (Rahmen zeichnen)</translation>
</message>
<message>
<source>Redraw the line's box</source>
<translation>Rahmen der Zeile neu zeichnen</translation>
</message>
<message>
<source>Move line up in the order</source>
<translation>Zeile in der Folge nach oben</translation>
</message>
<message>
<source>Move line down in the order</source>
<translation>Zeile in der Folge nach unten</translation>
</message>
<message>
<source>A &amp;new working starts here, or not</source>
<translation>Hier beginnt eine neue Rechn&amp;ung, oder nicht</translation>
</message>
<message>
<source>&amp;Write on the drawing, or look at it</source>
<translation>Auf die Zeichnung &amp;schreiben oder sie ansehen</translation>
</message>
<message>
<source>&amp;Rubber</source>
<translation>&amp;Radierer</translation>
</message>
<message>
<source>&amp;Select</source>
<translation>Aus&amp;wählen</translation>
</message>
<message>
<source>Save drawing as &amp;InkML…</source>
<translation>Zeichnung als &amp;InkML speichern …</translation>
</message>
<message>
<source>Check &amp;now</source>
<translation>&amp;Jetzt prüfen</translation>
</message>
<message>
<source>Go to first &amp;slip</source>
<translation>Zum ersten &amp;Fehler</translation>
</message>
<message>
<source>&amp;Hints one at a time (student)</source>
<translation>&amp;Hinweise einzeln (zum Üben)</translation>
</message>
<message>
<source>Next h&amp;int</source>
<translation>Nächster H&amp;inweis</translation>
</message>
<message>
<source>&amp;True for all values?</source>
<translation>&amp;Wahr für alle Werte?</translation>
</message>
<message>
<source>Takes the line as a claimed identity</source>
<translation>Nimmt die Zeile als behauptete Identität</translation>
</message>
<message>
<source>Co&amp;unterexample, or hide it</source>
<translation>&amp;Gegenbeispiel ein oder aus</translation>
</message>
<message>
<source>Declare line &amp;right</source>
<translation>Zeile für &amp;richtig erklären</translation>
</message>
<message>
<source>Declare line &amp;wrong</source>
<translation>Zeile für f&amp;alsch erklären</translation>
</message>
<message>
<source>Take &amp;my word back</source>
<translation>Mein Urteil &amp;zurücknehmen</translation>
</message>
<message>
<source>Mark &amp;scheme…</source>
<translation>&amp;Erwartungshorizont …</translation>
</message>
<message>
<source>&amp;Award the suggested marks</source>
<translation>&amp;Vorgeschlagene Punkte geben</translation>
</message>
<message>
<source>S&amp;top</source>
<translation>An&amp;halten</translation>
</message>
<message>
<source>The &amp;writing</source>
<translation>Die &amp;Schrift</translation>
</message>
<message>
<source>Whole &amp;page</source>
<translation>&amp;Ganze Seite</translation>
</message>
<message>
<source>Page &amp;width</source>
<translation>Seiten&amp;breite</translation>
</message>
<message>
<source>&amp;Full size</source>
<translation>&amp;Volle Größe</translation>
</message>
<message>
<source>Zoom &amp;in</source>
<translation>Ver&amp;größern</translation>
</message>
<message>
<source>Zoom &amp;out</source>
<translation>Ver&amp;kleinern</translation>
</message>
<message>
<source>&amp;Next page</source>
<translation>&amp;Nächste Seite</translation>
</message>
<message>
<source>P&amp;revious page</source>
<translation>&amp;Vorige Seite</translation>
</message>
<message>
<source>&amp;Keys</source>
<translation>&amp;Tasten</translation>
</message>
<message>
<source>&amp;About Firstslip</source>
<translation>&amp;Über Firstslip</translation>
</message>
<message>
<source>Message</source>
<translation>Meldung</translation>
</message>
<message>
<source>Open the &amp;log</source>
<translation>&amp;Protokoll öffnen</translation>
</message>
<message>
<source>What the program noted when it failed</source>
<translation>Was das Programm sich bei einem Fehlschlag notiert hat</translation>
</message>
<message>
<source>The log lies at {path}.</source>
<translation>Das Protokoll liegt unter {path}.</translation>
</message>
<message>
<source>The log is empty: nothing has failed.</source>
<translation>Das Protokoll ist leer: nichts ist fehlgeschlagen.</translation>
</message>
<message>
<source>&amp;Decimal comma</source>
<translation>&amp;Dezimalkomma</translation>
</message>
<message>
<source>Show 2.5 as 2,5, and take a comma between digits for a decimal one</source>
<translation>2.5 als 2,5 zeigen und ein Komma zwischen Ziffern als Dezimalkomma nehmen</translation>
</message>
<message>
<source>&amp;Language</source>
<translation>S&amp;prache</translation>
</message>
<message>
<source>As the &amp;system</source>
<translation>Wie das &amp;System</translation>
</message>
<message>
<source>This takes effect when Firstslip is started again.</source>
<translation>Das gilt, sobald Firstslip neu gestartet wird.</translation>
</message>
<message>
<source>Leave line to the checker</source>
<translation>Zeile der Prüfung überlassen</translation>
</message>
<message>
<source>Declare line right</source>
<translation>Zeile für richtig erklären</translation>
</message>
<message>
<source>Declare line wrong</source>
<translation>Zeile für falsch erklären</translation>
</message>
<message>
<source>Award marks</source>
<translation>Punkte geben</translation>
</message>
<message>
<source>Write</source>
<translation>Schreiben</translation>
</message>
<message>
<source>Change candidate number</source>
<translation>Kennnummer ändern</translation>
</message>
<message>
<source>{name}, page {number}</source>
<translation>{name}, Seite {number}</translation>
</message>
<message>
<source>no writing found</source>
<translation>keine Schrift gefunden</translation>
</message>
<message>
<source>not checked yet</source>
<translation>noch nicht geprüft</translation>
</message>
<message>
<source>{count} doubtful</source>
<translation>{count} unsicher</translation>
</message>
<message>
<source>first slip: line {number}</source>
<translation>erster Fehler: Zeile {number}</translation>
</message>
<message>
<source>no slip found</source>
<translation>kein Fehler gefunden</translation>
</message>
<message>
<source>Draw the cut across the line, or move it with the arrow keys, T turns it, Enter cuts. Esc leaves the line whole.</source>
<translation>Ziehen Sie den Schnitt durch die Zeile oder rücken Sie ihn mit den Pfeiltasten, T dreht ihn, Eingabe schneidet. Esc lässt die Zeile ganz.</translation>
</message>
<message>
<source>Draw a box round the line, or move the box with the arrow keys, size it with Shift and arrow keys, Enter takes it. Esc changes nothing.</source>
<translation>Ziehen Sie einen Rahmen um die Zeile oder rücken Sie ihn mit den Pfeiltasten; Umschalt und Pfeiltasten ändern die Größe, Eingabe übernimmt ihn. Esc ändert nichts.</translation>
</message>
<message>
<source>Line {number}: {word}. {reason}</source>
<translation>Zeile {number}: {word}. {reason}</translation>
</message>
<message>
<source>Line {number}: {word}.</source>
<translation>Zeile {number}: {word}.</translation>
</message>
<message>
<source>Paper</source>
<translation>Papier</translation>
</message>
<message>
<source>Rub out</source>
<translation>Radieren</translation>
</message>
<message>
<source>Move strokes</source>
<translation>Striche verschieben</translation>
</message>
<message>
<source>Scratch out</source>
<translation>Auskritzeln</translation>
</message>
<message>
<source>Save drawing as InkML</source>
<translation>Zeichnung als InkML speichern</translation>
</message>
<message>
<source>Reading what was written</source>
<translation>Geschriebenes wird gelesen</translation>
</message>
<message>
<source>Pen</source>
<translation>Stift</translation>
</message>
<message>
<source>Write; scribbling over writing scratches it out</source>
<translation>Schreiben; Geschriebenes durch Überkritzeln löschen</translation>
</message>
<message>
<source>Rubber</source>
<translation>Radierer</translation>
</message>
<message>
<source>Rub out whole strokes, as the pen's eraser end does</source>
<translation>Ganze Striche radieren, wie mit dem Radierende des Stifts</translation>
</message>
<message>
<source>Select</source>
<translation>Auswählen</translation>
</message>
<message>
<source>Draw round strokes, then drag them or press Delete</source>
<translation>Striche umfahren, dann ziehen oder Entf drücken</translation>
</message>
<message>
<source>Squared</source>
<translation>Kariert</translation>
</message>
<message>
<source>Ruled</source>
<translation>Liniert</translation>
</message>
<message>
<source>Plain</source>
<translation>Blanko</translation>
</message>
<message>
<source>How the line looks</source>
<translation>So sieht die Zeile aus</translation>
</message>
<message>
<source>Print marked page</source>
<translation>Seite mit Korrektur drucken</translation>
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
<source>Reading broke off. Open the page again.</source>
<translation>Das Lesen ist abgebrochen. Öffnen Sie die Seite noch einmal.</translation>
</message>
<message>
<source>{name}: no writing was found. Check that it shows the written side, sharp and near enough to read, and take the picture again.</source>
<translation>{name}: keine Schrift gefunden. Achten Sie darauf, dass die beschriebene Seite scharf und nah genug zu sehen ist, und fotografieren Sie sie noch einmal.</translation>
</message>
<message>
<source>Saving {name}</source>
<translation>{name} wird gespeichert</translation>
</message>
<message>
<source>Copying</source>
<translation>Wird kopiert</translation>
</message>
<message>
<source>One mark to a line: the mark, then the line that earns it, then words or ft, cao, exact, expanded, factorised after a semicolon. An empty line begins the scheme of the next working on the page; a single scheme serves all.</source>
<translation>Je Zeile ein Punkt: der Punkt, dann die Zeile, die ihn verdient, dann nach einem Semikolon Worte oder ft, cao, exact, expanded, factorised. Eine Leerzeile beginnt das Schema der nächsten Rechnung auf der Seite; ein einziges gilt für alle.</translation>
</message>
<message>
<source>Mark scheme</source>
<translation>Erwartungshorizont</translation>
</message>
<message>
<source>Suggest marks (Ctrl+Enter)</source>
<translation>Punkte vorschlagen (Strg+Eingabe)</translation>
</message>
<message>
<source>Line {number} of the scheme</source>
<translation>Zeile {number} des Schemas</translation>
</message>
<message>
<source>The scheme is no JSON. Write one mark to a line instead, like M1 2x=10.</source>
<translation>Das Schema ist kein JSON. Schreiben Sie je Zeile einen Punkt, etwa M1 2x=10.</translation>
</message>
<message>
<source>{a} times {b} is {c}</source>
<translation>{a} mal {b} ist {c}</translation>
</message>
<message>
<source>the square of {a} is {b}</source>
<translation>das Quadrat von {a} ist {b}</translation>
</message>
<message>
<source>twice {a} is {b}</source>
<translation>das Doppelte von {a} ist {b}</translation>
</message>
<message>
<source>{a} divided by {b} is {c}</source>
<translation>{a} geteilt durch {b} ist {c}</translation>
</message>
<message>
<source>divided by {a}, this is {b}</source>
<translation>geteilt durch {a} ergibt das {b}</translation>
</message>
<message>
<source>{a} to the power {b} is {c}</source>
<translation>{a} hoch {b} ist {c}</translation>
</message>
<message>
<source>the derivative of {a} is {b}</source>
<translation>die Ableitung von {a} ist {b}</translation>
</message>
<message>
<source>the integral of {a} is {b}</source>
<translation>eine Stammfunktion von {a} ist {b}</translation>
</message>
<message>
<source>the line before has {a}</source>
<translation>in der Zeile davor steht {a}</translation>
</message>
<message>
<source>the line before is {a}</source>
<translation>die Zeile davor ist {a}</translation>
</message>
<message>
<source>the line before gives {a}</source>
<translation>aus der Zeile davor folgt {a}</translation>
</message>
<message>
<source>the minus before the bracket turns {a} into {b}</source>
<translation>das Minus vor der Klammer macht aus {a} {b}</translation>
</message>
<message>
<source>the minus in front turns {a} into {b}</source>
<translation>das Minus davor macht aus {a} {b}</translation>
</message>
<message>
<source>both factors are negative, so the product is positive</source>
<translation>beide Faktoren sind negativ, also ist das Produkt positiv</translation>
</message>
<message>
<source>one factor is negative, so the product is negative</source>
<translation>ein Faktor ist negativ, also ist das Produkt negativ</translation>
</message>
<message>
<source>no factor is negative, so the product is positive</source>
<translation>kein Faktor ist negativ, also ist das Produkt positiv</translation>
</message>
<message>
<source>both are negative, so the quotient is positive</source>
<translation>beide sind negativ, also ist der Quotient positiv</translation>
</message>
<message>
<source>one of the two is negative, so the quotient is negative</source>
<translation>eines von beiden ist negativ, also ist der Quotient negativ</translation>
</message>
<message>
<source>two minus signs make a plus</source>
<translation>minus mal minus ergibt plus</translation>
</message>
<message>
<source>with the other sign the line follows</source>
<translation>mit dem anderen Vorzeichen folgt die Zeile</translation>
</message>
<message>
<source>with the other sign the line agrees with the line before</source>
<translation>mit dem anderen Vorzeichen passt die Zeile zur Zeile davor</translation>
</message>
<message>
<source>with {a} in place of {b} the line follows</source>
<translation>mit {a} statt {b} folgt die Zeile</translation>
</message>
<message>
<source>with {a} in place of {b} the line agrees with the line before</source>
<translation>mit {a} statt {b} passt die Zeile zur Zeile davor</translation>
</message>
<message>
<source>the letter {a} was lost</source>
<translation>die Variable {a} ging verloren</translation>
</message>
<message>
<source>the letter is {a}, not {b}</source>
<translation>die Variable ist {a}, nicht {b}</translation>
</message>
<message>
<source>the power is {a}</source>
<translation>die Hochzahl ist {a}</translation>
</message>
<message>
<source>the power {a} is missing</source>
<translation>die Hochzahl {a} fehlt</translation>
</message>
<message>
<source>here the two are added</source>
<translation>hier werden beide addiert</translation>
</message>
<message>
<source>here the two are multiplied</source>
<translation>hier werden beide multipliziert</translation>
</message>
<message>
<source>no root is taken here</source>
<translation>hier wird keine Wurzel gezogen</translation>
</message>
<message>
<source>{a} makes the line before true as well</source>
<translation>auch {a} erfüllt die Zeile davor</translation>
</message>
<message>
<source>the root of a square is never negative, so it is the absolute value</source>
<translation>die Wurzel aus einem Quadrat ist nie negativ, sie ist also der Betrag</translation>
</message>
<message>
<source>{a} was {b} on the left side only; the right side needs the same</source>
<translation>{a} wurde nur auf der linken Seite verrechnet ({b}); rechts muss dasselbe geschehen</translation>
</message>
<message>
<source>{a} was {b} on the right side only; the left side needs the same</source>
<translation>{a} wurde nur auf der rechten Seite verrechnet ({b}); links muss dasselbe geschehen</translation>
</message>
<message>
<source>each term in the bracket is multiplied by what stands before it</source>
<translation>jedes Glied in der Klammer wird mit dem multipliziert, was davor steht</translation>
</message>
<message>
<source>a minus before a bracket turns the sign of each term in it</source>
<translation>ein Minus vor der Klammer dreht das Vorzeichen jedes Gliedes darin um</translation>
</message>
<message>
<source>the sign of a product comes from the signs of both factors</source>
<translation>das Vorzeichen eines Produkts ergibt sich aus den Vorzeichen beider Faktoren</translation>
</message>
<message>
<source>the square of a sum has a middle term, twice the product</source>
<translation>das Quadrat einer Summe hat ein Mittelglied, das doppelte Produkt</translation>
</message>
<message>
<source>the square of a difference has a middle term and ends in a plus</source>
<translation>das Quadrat einer Differenz hat ein Mittelglied und endet mit plus</translation>
</message>
<message>
<source>the square of a negative term is positive</source>
<translation>das Quadrat eines negativen Gliedes ist positiv</translation>
</message>
<message>
<source>a power does not spread over a sum</source>
<translation>eine Potenz verteilt sich nicht auf eine Summe</translation>
</message>
<message>
<source>only terms with the same letters and powers are collected</source>
<translation>nur gleichartige Glieder werden zusammengefasst</translation>
</message>
<message>
<source>adding like terms keeps the power</source>
<translation>beim Zusammenfassen gleichartiger Glieder bleibt die Hochzahl</translation>
</message>
<message>
<source>a sign belongs to the term that follows it</source>
<translation>ein Vorzeichen gehört zu dem Glied, das danach kommt</translation>
</message>
<message>
<source>a term divided by itself leaves 1</source>
<translation>ein Glied durch sich selbst geteilt ergibt 1</translation>
</message>
<message>
<source>the common factor is taken out of every term</source>
<translation>der gemeinsame Faktor wird aus jedem Glied ausgeklammert</translation>
</message>
<message>
<source>At {a} the line before is {b} and this line is {c}.</source>
<translation>Für {a} ergibt die Zeile davor {b} und diese Zeile {c}.</translation>
</message>
<message>
<source>At {a} the two lines have different values.</source>
<translation>Für {a} haben die beiden Zeilen verschiedene Werte.</translation>
</message>
<message>
<source>The line before is {a}, this line is {b}.</source>
<translation>Die Zeile davor ist {a}, diese Zeile ist {b}.</translation>
</message>
<message>
<source>The two numbers are different.</source>
<translation>Die beiden Zahlen sind verschieden.</translation>
</message>
<message>
<source>{a} satisfies the line before but not this line.</source>
<translation>{a} erfüllt die Zeile davor, aber nicht diese Zeile.</translation>
</message>
<message>
<source>{a} satisfies this line but not the line before.</source>
<translation>{a} erfüllt diese Zeile, aber nicht die Zeile davor.</translation>
</message>
<message>
<source>{a} satisfies this line but not the line before: check it and reject it.</source>
<translation>{a} erfüllt diese Zeile, aber nicht die Zeile davor: Probe machen und verwerfen.</translation>
</message>
<message>
<source>{a} satisfies the line before but not this line, and {b} satisfies this line but not the line before.</source>
<translation>{a} erfüllt die Zeile davor, aber nicht diese Zeile, und {b} erfüllt diese Zeile, aber nicht die Zeile davor.</translation>
</message>
<message>
<source>The solution {a} is lost.</source>
<translation>Die Lösung {a} geht verloren.</translation>
</message>
<message>
<source>Not all solutions are given.</source>
<translation>Es sind nicht alle Lösungen angegeben.</translation>
</message>
<message>
<source>No value satisfies this line.</source>
<translation>Kein Wert erfüllt diese Zeile.</translation>
</message>
<message>
<source>The value is rounded.</source>
<translation>Der Wert ist gerundet.</translation>
</message>
<message>
<source>The time for this step ran out.</source>
<translation>Die Zeit für diese Umformung ist abgelaufen.</translation>
</message>
<message>
<source>The time for this line ran out.</source>
<translation>Die Zeit für diese Zeile ist abgelaufen.</translation>
</message>
<message>
<source>The numbers or powers are too large to work out.</source>
<translation>Die Zahlen oder Hochzahlen sind zu groß zum Ausrechnen.</translation>
</message>
<message>
<source>It is not clear how this line comes from the expression before it.</source>
<translation>Es ist nicht klar, wie diese Zeile aus dem Term davor entsteht.</translation>
</message>
<message>
<source>It is not clear where the equation comes from.</source>
<translation>Es ist nicht klar, woher die Gleichung kommt.</translation>
</message>
<message>
<source>There is no line before it to judge it from.</source>
<translation>Davor steht keine Zeile, an der sie gemessen werden könnte.</translation>
</message>
<message>
<source>A letter is new on this line; it is not known what it stands for.</source>
<translation>In dieser Zeile ist eine Variable neu; wofür sie steht, ist nicht bekannt.</translation>
</message>
<message>
<source>The equals signs run on; write it as two lines.</source>
<translation>Die Gleichheitszeichen laufen weiter; schreiben Sie zwei Zeilen daraus.</translation>
</message>
<message>
<source>It is true for all values.</source>
<translation>Das gilt für alle Werte.</translation>
</message>
<message>
<source>Taken as given for the lines after it.</source>
<translation>Wird für die folgenden Zeilen als gegeben genommen.</translation>
</message>
<message>
<source>At character {a}: {b} expected. Edit the line there.</source>
<translation>Bei Zeichen {a} fehlt etwas ({b}). Ändern Sie die Zeile dort.</translation>
</message>
<message>
<source>The answer is right.</source>
<translation>Das Ergebnis ist richtig.</translation>
</message>
<message>
<source>The answer is wrong.</source>
<translation>Das Ergebnis ist falsch.</translation>
</message>
<message>
<source>The answer follows from the slip on line {a} (ft).</source>
<translation>Das Ergebnis folgt aus dem Fehler in Zeile {a} (Folgefehler).</translation>
</message>
<message>
<source>The answer is right, but it comes from wrong working: see line {a}.</source>
<translation>Das Ergebnis ist richtig, kommt aber aus einem falschen Rechenweg: siehe Zeile {a}.</translation>
</message>
<message>
<source>The answer is right; the slip on line {a} was put right.</source>
<translation>Das Ergebnis ist richtig; der Fehler in Zeile {a} wurde berichtigt.</translation>
</message>
<message>
<source>It has not the form asked.</source>
<translation>Es hat nicht die verlangte Form.</translation>
</message>
<message>
<source>It is still to be solved.</source>
<translation>Es ist noch nach der Unbekannten aufzulösen.</translation>
</message>
<message>
<source>{a} does not satisfy every equation.</source>
<translation>{a} erfüllt nicht jede Gleichung.</translation>
</message>
<message>
<source>The solution {a} is missing.</source>
<translation>Die Lösung {a} fehlt.</translation>
</message>
<message>
<source>True for all values</source>
<translation>Wahr für alle Werte</translation>
</message>
<message>
<source>Not true for all values: at {a} the sides are {b}.</source>
<translation>Nicht wahr für alle Werte: für {a} sind die Seiten {b}.</translation>
</message>
<message>
<source>Check the reading first: with another reading of it the line follows.</source>
<translation>Prüfen Sie erst das Gelesene: mit einer anderen Lesart folgt die Zeile.</translation>
</message>
<message>
<source>Check the reading first: with another reading of line {a} the line follows.</source>
<translation>Prüfen Sie erst das Gelesene: mit einer anderen Lesart von Zeile {a} folgt die Zeile.</translation>
</message>
<message>
<source>Check the reading first: line {a} was hard to read.</source>
<translation>Prüfen Sie erst das Gelesene: Zeile {a} war schwer zu lesen.</translation>
</message>
<message>
<source>This line could not be read. Type what it says.</source>
<translation>Diese Zeile konnte nicht gelesen werden. Tippen Sie, wie sie lautet.</translation>
</message>
<message>
<source>There is no file {a}. Check the name and the folder, then open it again.</source>
<translation>Es gibt keine Datei {a}. Prüfen Sie Namen und Ordner und öffnen Sie sie noch einmal.</translation>
</message>
<message>
<source>{a} is an empty file. Copy it again from the camera or phone.</source>
<translation>{a} ist eine leere Datei. Kopieren Sie sie noch einmal von Kamera oder Telefon.</translation>
</message>
<message>
<source>{a} is a HEIC or AVIF photo, which is not supported. Export it as JPEG and open that.</source>
<translation>{a} ist ein Foto in HEIC oder AVIF, das nicht geöffnet werden kann. Speichern Sie es als JPEG und öffnen Sie dieses.</translation>
</message>
<message>
<source>{a} is not a picture that can be opened. Choose a {b} file.</source>
<translation>{a} ist kein Bild, das sich öffnen lässt. Wählen Sie eine Datei dieser Art: {b}.</translation>
</message>
<message>
<source>{a} holds text, not a picture. Choose a {b} file.</source>
<translation>{a} enthält Text, kein Bild. Wählen Sie eine Datei dieser Art: {b}.</translation>
</message>
<message>
<source>{a} is locked with a password. Save a copy without the password and open that.</source>
<translation>{a} ist mit einem Kennwort geschützt. Speichern Sie eine Kopie ohne Kennwort und öffnen Sie diese.</translation>
</message>
<message>
<source>{a} may not be read. Ask for the right to read it, or choose another file.</source>
<translation>{a} darf nicht gelesen werden. Lassen Sie sich das Leserecht geben oder wählen Sie eine andere Datei.</translation>
</message>
<message>
<source>Open &amp;recent</source>
<translation>Zuletzt &amp;geöffnet</translation>
</message>
<message>
<source>&amp;New set</source>
<translation>&amp;Neuer Stapel</translation>
</message>
<message>
<source>Put the pages on the desk away in their set and begin an empty one</source>
<translation>Die Seiten auf dem Tisch in ihrem Stapel weglegen und einen leeren beginnen</translation>
</message>
<message>
<source>Open s&amp;et…</source>
<translation>S&amp;tapel öffnen …</translation>
</message>
<message>
<source>Save set &amp;as…</source>
<translation>Stapel speichern &amp;unter …</translation>
</message>
<message>
<source>The set at a &amp;glance</source>
<translation>Der Stapel im Ü&amp;berblick</translation>
</message>
<message>
<source>P&amp;rint marked page…</source>
<translation>Seite mit Korrektur d&amp;rucken …</translation>
</message>
<message>
<source>Open set</source>
<translation>Stapel öffnen</translation>
</message>
<message>
<source>Save set as</source>
<translation>Stapel speichern unter</translation>
</message>
<message>
<source>Your last changes could not be kept. Save the set under another name first. Close all the same?</source>
<translation>Ihre letzten Änderungen konnten nicht gesichert werden. Speichern Sie den Stapel erst unter einem anderen Namen. Trotzdem schließen?</translation>
</message>
<message>
<source>Sets (*{ending})</source>
<translation>Stapel (*{ending})</translation>
</message>
<message>
<source>Nothing was opened yet</source>
<translation>Noch nichts geöffnet</translation>
</message>
<message>
<source>Forget these</source>
<translation>Diese Liste leeren</translation>
</message>
<message>
<source>Set: {name}</source>
<translation>Stapel: {name}</translation>
</message>
<message>
<source>Set: {name}, all kept</source>
<translation>Stapel: {name}, alles gesichert</translation>
</message>
<message>
<source>Set: {name}, keeping…</source>
<translation>Stapel: {name}, wird gesichert …</translation>
</message>
<message>
<source>Making a set</source>
<translation>Stapel wird angelegt</translation>
</message>
<message>
<source>Opening {name}</source>
<translation>{name} wird geöffnet</translation>
</message>
<message>
<source>The folder {folder} cannot be made, so nothing is kept. Save the set under a name of your own.</source>
<translation>Der Ordner {folder} kann nicht angelegt werden, also wird nichts gesichert. Speichern Sie den Stapel unter einem eigenen Namen.</translation>
</message>
<message>
<source>Desk</source>
<translation>Tisch</translation>
</message>
<message>
<source>{name} lacks your last changes, so it stays open. Save it under another name.</source>
<translation>In {name} fehlen Ihre letzten Änderungen, deshalb bleibt er offen. Speichern Sie ihn unter einem anderen Namen.</translation>
</message>
<message>
<source>Opening the picture</source>
<translation>Bild wird geöffnet</translation>
</message>
<message>
<source>number worked out wrongly</source>
<translation>Zahl falsch ausgerechnet</translation>
</message>
<message>
<source>term cancelled that is no factor</source>
<translation>aus einer Summe gekürzt</translation>
</message>
<message>
<source>copied wrongly</source>
<translation>falsch abgeschrieben</translation>
</message>
<message>
<source>declared wrong by the teacher</source>
<translation>von der Lehrkraft für falsch erklärt</translation>
</message>
<message>
<source>differentiation</source>
<translation>Ableitung</translation>
</message>
<message>
<source>not every term divided</source>
<translation>nicht jedes Glied dividiert</translation>
</message>
<message>
<source>term left out</source>
<translation>Glied vergessen</translation>
</message>
<message>
<source>term too many</source>
<translation>ein Glied zu viel</translation>
</message>
<message>
<source>pair of factors</source>
<translation>Faktorenpaar</translation>
</message>
<message>
<source>division of fractions</source>
<translation>Division von Brüchen</translation>
</message>
<message>
<source>fraction multiplied above and below</source>
<translation>Zähler und Nenner multipliziert</translation>
</message>
<message>
<source>product of fractions</source>
<translation>Produkt von Brüchen</translation>
</message>
<message>
<source>sum of fractions</source>
<translation>Summe von Brüchen</translation>
</message>
<message>
<source>numerator not scaled</source>
<translation>Zähler nicht erweitert</translation>
</message>
<message>
<source>function of a product</source>
<translation>Funktion eines Produkts</translation>
</message>
<message>
<source>function of a sum</source>
<translation>Funktion einer Summe</translation>
</message>
<message>
<source>direction of the inequality</source>
<translation>Richtung des Ungleichheitszeichens</translation>
</message>
<message>
<source>integration</source>
<translation>Integration</translation>
</message>
<message>
<source>letter lost</source>
<translation>Variable verloren</translation>
</message>
<message>
<source>collecting like terms</source>
<translation>gleichartige Glieder zusammenfassen</translation>
</message>
<message>
<source>law of logarithms</source>
<translation>Logarithmengesetz</translation>
</message>
<message>
<source>not every term multiplied</source>
<translation>nicht jedes Glied multipliziert</translation>
</message>
<message>
<source>done on one side only</source>
<translation>nur auf einer Seite gerechnet</translation>
</message>
<message>
<source>order of operations</source>
<translation>Punkt vor Strich</translation>
</message>
<message>
<source>other slip</source>
<translation>anderer Fehler</translation>
</message>
<message>
<source>law of powers</source>
<translation>Potenzgesetz</translation>
</message>
<message>
<source>product worked out wrongly</source>
<translation>Produkt falsch ausgerechnet</translation>
</message>
<message>
<source>product that is not zero</source>
<translation>Produkt, das nicht null ist</translation>
</message>
<message>
<source>solution lost</source>
<translation>Lösung verloren</translation>
</message>
<message>
<source>root of a square</source>
<translation>Wurzel aus einem Quadrat</translation>
</message>
<message>
<source>root of a sum</source>
<translation>Wurzel aus einer Summe</translation>
</message>
<message>
<source>wrong sign</source>
<translation>Vorzeichenfehler</translation>
</message>
<message>
<source>sign before a bracket</source>
<translation>Minus vor der Klammer</translation>
</message>
<message>
<source>sign of a moved term</source>
<translation>Vorzeichen beim Hinüberbringen</translation>
</message>
<message>
<source>sign of a product</source>
<translation>Vorzeichen eines Produkts</translation>
</message>
<message>
<source>square of a sum</source>
<translation>Quadrat einer Summe (binomische Formel)</translation>
</message>
<message>
<source>unlike terms collected</source>
<translation>ungleichartige Glieder zusammengefasst</translation>
</message>
<message>
<source>wrong operation</source>
<translation>falsche Rechenart</translation>
</message>
<message>
<source>{name} cannot be made there. Choose another folder.</source>
<translation>{name} kann dort nicht angelegt werden. Wählen Sie einen anderen Ordner.</translation>
</message>
<message>
<source>{name} is damaged and cannot be opened. It was left as it is; open a copy of it from before, or its pages.</source>
<translation>{name} ist beschädigt und lässt sich nicht öffnen. Die Datei blieb, wie sie ist; öffnen Sie eine frühere Kopie oder die Seiten selbst.</translation>
</message>
<message>
<source>{name} was made by a newer Firstslip. It was left as it is; install the newer version to open it.</source>
<translation>{name} stammt von einem neueren Firstslip. Die Datei blieb, wie sie ist; installieren Sie die neuere Fassung, um sie zu öffnen.</translation>
</message>
<message>
<source>{name} is open in another window. Close it there, or open a copy.</source>
<translation>{name} ist in einem anderen Fenster geöffnet. Schließen Sie ihn dort oder öffnen Sie eine Kopie.</translation>
</message>
<message>
<source>{name} may not be changed, so nothing would be kept. Copy it to a folder of yours and open the copy.</source>
<translation>{name} darf nicht geändert werden, es würde also nichts gesichert. Kopieren Sie die Datei in einen eigenen Ordner und öffnen Sie die Kopie.</translation>
</message>
<message>
<source>{name} could not be saved: the disk is full. Make room; it is then saved by itself.</source>
<translation>{name} konnte nicht gespeichert werden: der Datenträger ist voll. Schaffen Sie Platz; dann wird von selbst gespeichert.</translation>
</message>
<message>
<source>{name} cannot be opened or made there. Choose another folder.</source>
<translation>{name} kann dort weder geöffnet noch angelegt werden. Wählen Sie einen anderen Ordner.</translation>
</message>
<message>
<source>{name} could not be reached. Check the disk or the connection; then try again.</source>
<translation>{name} ist nicht erreichbar. Prüfen Sie Datenträger oder Verbindung und versuchen Sie es noch einmal.</translation>
</message>
<message>
<source>There is no file {name}. Check the name and the folder, then open it again.</source>
<translation>Es gibt keine Datei {name}. Prüfen Sie Namen und Ordner und öffnen Sie sie noch einmal.</translation>
</message>
<message>
<source>{name} is a folder. Choose a set ({ending}) inside it.</source>
<translation>{name} ist ein Ordner. Wählen Sie einen Stapel ({ending}) darin.</translation>
</message>
<message>
<source>{name} may not be read. Ask for the right to read it, or choose another file.</source>
<translation>{name} darf nicht gelesen werden. Lassen Sie sich das Leserecht geben oder wählen Sie eine andere Datei.</translation>
</message>
<message>
<source>{name} is not a set of Firstslip. Choose a file that ends in {ending}.</source>
<translation>{name} ist kein Stapel von Firstslip. Wählen Sie eine Datei mit der Endung {ending}.</translation>
</message>
<message>
<source>Suggesting marks</source>
<translation>Punkte werden vorgeschlagen</translation>
</message>
<message>
<source>Read as {symbol}. Or is it</source>
<translation>Gelesen als {symbol}. Oder ist es</translation>
</message>
<message>
<source>&amp;Other: type it</source>
<translation>&amp;Anderes: eintippen</translation>
</message>
<message>
<source>Verdict on the chosen line</source>
<translation>Urteil über die gewählte Zeile</translation>
</message>
<message>
<source>The next hint tells a little more</source>
<translation>Der nächste Hinweis verrät etwas mehr</translation>
</message>
<message>
<source>Show a counterexample</source>
<translation>Gegenbeispiel zeigen</translation>
</message>
<message>
<source>Numbers for which the step fails</source>
<translation>Zahlen, für die die Umformung nicht stimmt</translation>
</message>
<message>
<source>The reading is changed; the photo is not</source>
<translation>Geändert wird das Gelesene, nicht das Foto</translation>
</message>
<message>
<source>Declare right</source>
<translation>Für richtig erklären</translation>
</message>
<message>
<source>Your word counts above the checker's</source>
<translation>Ihr Urteil gilt vor dem der Prüfung</translation>
</message>
<message>
<source>Declare wrong</source>
<translation>Für falsch erklären</translation>
</message>
<message>
<source>Take my word back</source>
<translation>Mein Urteil zurücknehmen</translation>
</message>
<message>
<source>The checker's verdict counts again</source>
<translation>Das Urteil der Prüfung gilt wieder</translation>
</message>
<message>
<source>Note to your verdict</source>
<translation>Bemerkung zu Ihrem Urteil</translation>
</message>
<message>
<source>A note to your verdict, kept with the line</source>
<translation>Bemerkung zu Ihrem Urteil, bleibt bei der Zeile</translation>
</message>
<message>
<source>Marks beside this line</source>
<translation>Punkte neben dieser Zeile</translation>
</message>
<message>
<source>Marks, such as M1 A0</source>
<translation>Punkte, etwa M1 A0</translation>
</message>
<message>
<source>Award these</source>
<translation>Diese geben</translation>
</message>
<message>
<source>Writes the suggested marks beside the lines</source>
<translation>Schreibt die vorgeschlagenen Punkte neben die Zeilen</translation>
</message>
<message>
<source>The reason for each mark</source>
<translation>Die Begründung jedes Punktes</translation>
</message>
<message>
<source>Reasons for the suggested marks</source>
<translation>Begründungen der vorgeschlagenen Punkte</translation>
</message>
<message>
<source>Hint {next_hint} of {grades} (Ctrl+H)</source>
<translation>Hinweis {next_hint} von {grades} (Strg+H)</translation>
</message>
<message>
<source>Line {number} says the other</source>
<translation>Zeile {number} lautet anders</translation>
</message>
<message>
<source>Counterexample</source>
<translation>Gegenbeispiel</translation>
</message>
<message>
<source>Hide the counterexample</source>
<translation>Gegenbeispiel ausblenden</translation>
</message>
<message>
<source> (up to {highest} if you give the open ones)</source>
<translation> (bis zu {highest}, wenn Sie die offenen geben)</translation>
</message>
<message>
<source>{total} of {out_of}</source>
<translation>{total} von {out_of}</translation>
</message>
<message>
<source>Hide why</source>
<translation>Begründung ausblenden</translation>
</message>
<message>
<source>A suggestion by your scheme; the teacher decides.</source>
<translation>Ein Vorschlag nach Ihrem Schema; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>earned</source>
<translation>verdient</translation>
</message>
<message>
<source>not earned</source>
<translation>nicht verdient</translation>
</message>
<message>
<source>open</source>
<translation>offen</translation>
</message>
<message>
<source>Award suggested marks</source>
<translation>Vorgeschlagene Punkte geben</translation>
</message>
<message>
<source>as given</source>
<translation>wie gegeben</translation>
</message>
<message>
<source>follows</source>
<translation>folgt</translation>
</message>
<message>
<source>does not follow</source>
<translation>folgt nicht</translation>
</message>
<message>
<source>follows from the slip (ft)</source>
<translation>folgt aus dem Fehler (Folgefehler)</translation>
</message>
<message>
<source>ft</source>
<translation>Folgefehler</translation>
</message>
<message>
<source>back on track</source>
<translation>wieder richtig</translation>
</message>
<message>
<source>loses solutions</source>
<translation>verliert Lösungen</translation>
</message>
<message>
<source>adds solutions</source>
<translation>fügt Lösungen hinzu</translation>
</message>
<message>
<source>undecided</source>
<translation>unentschieden</translation>
</message>
<message>
<source>note</source>
<translation>Notiz</translation>
</message>
<message>
<source>check the reading first</source>
<translation>erst das Gelesene prüfen</translation>
</message>
<message>
<source>check reading</source>
<translation>Gelesenes prüfen</translation>
</message>
<message>
<source>declared right</source>
<translation>für richtig erklärt</translation>
</message>
<message>
<source>declared wrong</source>
<translation>für falsch erklärt</translation>
</message>
<message>
<source>true for all values</source>
<translation>wahr für alle Werte</translation>
</message>
<message>
<source>identity</source>
<translation>Identität</translation>
</message>
<message>
<source>not true for all values</source>
<translation>nicht wahr für alle Werte</translation>
</message>
<message>
<source>no identity</source>
<translation>keine Identität</translation>
</message>
<message>
<source>Open a photo, scan, PDF or InkML file of worked algebra (Ctrl+O),
drop it here, paste a picture (Ctrl+V), or type a working (Ctrl+T).</source>
<translation>Öffnen Sie ein Foto, einen Scan, eine PDF- oder InkML-Datei mit einer Rechnung (Strg+O),
ziehen Sie sie hierher, fügen Sie ein Bild ein (Strg+V) oder tippen Sie eine Rechnung (Strg+T).</translation>
</message>
<message>
<source>No doubtful line is left.</source>
<translation>Es ist keine unsichere Zeile mehr da.</translation>
</message>
<message>
<source>Marks and verdicts are a suggestion: the teacher decides.</source>
<translation>Punkte und Urteile sind ein Vorschlag: die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>line {number}</source>
<translation>Zeile {number}</translation>
</message>
<message>
<source>lines {first} to {last}</source>
<translation>Zeilen {first} bis {last}</translation>
</message>
<message>
<source>Working {number} ({span})</source>
<translation>Rechnung {number} ({span})</translation>
</message>
<message>
<source>First slip: line {number}, as you declared.</source>
<translation>Erster Fehler: Zeile {number}, wie Sie erklärt haben.</translation>
</message>
<message>
<source>Line {number} does not follow as it was read.</source>
<translation>Zeile {number} folgt nicht, so wie sie gelesen wurde.</translation>
</message>
<message>
<source>{count} later line follows from it (ft).</source>
<translation>{count} spätere Zeile folgt daraus (Folgefehler).</translation>
</message>
<message>
<source>{count} later lines follow from it (ft).</source>
<translation>{count} spätere Zeilen folgen daraus (Folgefehler).</translation>
</message>
<message>
<source>First slip: line {number}.</source>
<translation>Erster Fehler: Zeile {number}.</translation>
</message>
<message>
<source>No line could be read yet.</source>
<translation>Noch konnte keine Zeile gelesen werden.</translation>
</message>
<message>
<source>No slip found, but {lines} could not be read.</source>
<translation>Kein Fehler gefunden, aber nicht lesbar: {lines}.</translation>
</message>
<message>
<source>No slip found; {lines} could not be decided.</source>
<translation>Kein Fehler gefunden; nicht zu entscheiden: {lines}.</translation>
</message>
<message>
<source>No slip found; look at {lines}.</source>
<translation>Kein Fehler gefunden; sehen Sie sich an: {lines}.</translation>
</message>
<message>
<source>No slip left: {lines} was declared right.</source>
<translation>Kein Fehler mehr: {lines} wurde für richtig erklärt.</translation>
</message>
<message>
<source>No slip left: {lines} were declared right.</source>
<translation>Kein Fehler mehr: {lines} wurden für richtig erklärt.</translation>
</message>
<message>
<source>One line only: nothing to compare it with.</source>
<translation>Nur eine Zeile: nichts zum Vergleichen.</translation>
</message>
<message>
<source>Every line follows.</source>
<translation>Jede Zeile folgt.</translation>
</message>
<message>
<source>Every line follows as read, but {lines} was hard to read.</source>
<translation>Jede Zeile folgt, wie gelesen, aber {lines} war schwer zu lesen.</translation>
</message>
<message>
<source>Every line follows as read, but {lines} were hard to read.</source>
<translation>Jede Zeile folgt, wie gelesen, aber {lines} waren schwer zu lesen.</translation>
</message>
<message>
<source>Judged from lines whose reading should be checked first.</source>
<translation>Beurteilt nach Zeilen, deren Gelesenes erst zu prüfen ist.</translation>
</message>
<message>
<source>From line {number}</source>
<translation>Aus Zeile {number}</translation>
</message>
<message>
<source>As read</source>
<translation>Wie gelesen</translation>
</message>
<message>
<source>Term</source>
<translation>Glied</translation>
</message>
<message>
<source>Check</source>
<translation>Probe</translation>
</message>
<message>
<source>lines {numbers} and {last}</source>
<translation>Zeilen {numbers} und {last}</translation>
</message>
</context>
</TS>
