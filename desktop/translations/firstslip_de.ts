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
<source>From line {number}</source>
<translation>Aus Zeile {number}</translation>
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
<source>Open a photo, scan, PDF or InkML file of worked algebra (Ctrl+O),
drop it here, paste a picture (Ctrl+V), or type a working (Ctrl+T).</source>
<translation>Öffnen Sie ein Foto, einen Scan, eine PDF- oder InkML-Datei mit einer Rechnung (Strg+O),
ziehen Sie sie hierher, fügen Sie ein Bild ein (Strg+V) oder tippen Sie eine Rechnung (Strg+T).</translation>
</message>
<message>
<source>The first page appears here as soon as its lines are found.</source>
<translation>Das erste Blatt erscheint hier, sobald seine Zeilen gefunden sind.</translation>
</message>
<message>
<source>Write on the paper with the pen or the mouse. Each line is read and checked when the pen rests.</source>
<translation>Schreiben Sie mit Stift oder Maus auf das Papier. Ruht der Stift, wird jede Zeile gelesen und geprüft.</translation>
</message>
<message>
<source>No line is left. Ctrl+I adds one to type into.</source>
<translation>Keine Zeile ist übrig. Strg+I fügt eine zum Tippen ein.</translation>
</message>
<message>
<source>No line was found on this page. Ctrl+I adds one: draw a box round its writing. {key} turns the page, if it lies on its side or head.</source>
<translation>Auf dieser Seite wurde keine Zeile gefunden. Strg+I fügt eine ein: Ziehen Sie einen Rahmen um ihre Schrift. Liegt das Blatt auf der Seite oder steht es auf dem Kopf, dreht {key} es.</translation>
</message>
<message>
<source>The lines of the turned page are being found.</source>
<translation>Die Zeilen des gedrehten Blatts werden gesucht.</translation>
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
<source>{name} marked</source>
<translation>{name} korrigiert</translation>
</message>
<message>
<source>Save marked picture as {kind}</source>
<translation>Bild mit Korrektur als {kind} speichern</translation>
</message>
<message>
<source>Weighing the readings</source>
<translation>Lesungen werden abgewogen</translation>
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
<source>{name} ({number} of {every})</source>
<translation>{name} ({number} von {every})</translation>
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
<source>Change where a line carries on</source>
<translation>Fortsetzung einer Zeile ändern</translation>
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
<source>LaTeX, for example 2x^2-3x=5</source>
<translation>LaTeX, zum Beispiel 2x^2-3x=5</translation>
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
<source>Line {number} was read otherwise before you confirmed lines in this hand. Key {key} takes that reading, Enter this one.</source>
<translation>Zeile {number} wurde anders gelesen, bevor Sie Zeilen in dieser Handschrift bestätigt haben. Taste {key} nimmt jene Lesung, Eingabe diese.</translation>
</message>
<message>
<source>Line {number} reads otherwise by the hand of the confirmed lines. Key {key} takes that reading, Enter this one.</source>
<translation>Zeile {number} liest sich nach der Handschrift der bestätigten Zeilen anders. Taste {key} nimmt jene Lesung, Eingabe diese.</translation>
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
<source>One line, taken as a claim for all values.</source>
<translation>Eine Zeile, als Behauptung für alle Werte genommen.</translation>
</message>
<message>
<source>reads otherwise by the hand of the confirmed lines</source>
<translation>nach der Handschrift der bestätigten Zeilen anders gelesen</translation>
</message>
<message>
<source>may read otherwise by the hand of the confirmed lines</source>
<translation>nach der Handschrift der bestätigten Zeilen vielleicht anders zu lesen</translation>
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
<source>missing: </source>
<translation>fehlt: </translation>
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
<source>This line carries &amp;on the one above, or not</source>
<translation>Zeile s&amp;etzt die darüber fort, oder nicht</translation>
</message>
<message>
<source>The two are then judged as one long line</source>
<translation>Beide werden dann als eine lange Zeile beurteilt</translation>
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
<source>Select the &amp;next stroke</source>
<translation>Den &amp;nächsten Strich auswählen</translation>
</message>
<message>
<source>Arrows move what is selected, Shift with arrows moves it further, Del rubs it out</source>
<translation>Pfeile verschieben das Ausgewählte, mit Umschalt weiter; Entf radiert es</translation>
</message>
<message>
<source>Select the pre&amp;vious stroke</source>
<translation>Den &amp;vorigen Strich auswählen</translation>
</message>
<message>
<source>&amp;Take one stroke more</source>
<translation>Einen Strich da&amp;zunehmen</translation>
</message>
<message>
<source>Take one stroke &amp;less</source>
<translation>Einen Strich we&amp;glassen</translation>
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
<source>&amp;Turn page a quarter right</source>
<translation>Blatt nach &amp;rechts drehen</translation>
</message>
<message>
<source>Its lines are found and read again then; Undo takes it back</source>
<translation>Ihre Zeilen werden danach neu gesucht und gelesen; Rückgängig nimmt es zurück</translation>
</message>
<message>
<source>Turn page a &amp;quarter left</source>
<translation>Blatt nach &amp;links drehen</translation>
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
<source>The picture lay on its side; the page is shown upright. {key} turns it further.</source>
<translation>Das Bild lag auf der Seite; das Blatt ist aufrecht gezeigt. {key} dreht es weiter.</translation>
</message>
<message>
<source>The picture stood on its head; the page is shown upright. {key} turns it further.</source>
<translation>Das Bild stand auf dem Kopf; das Blatt ist aufrecht gezeigt. {key} dreht es weiter.</translation>
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
<source>Turn page</source>
<translation>Blatt drehen</translation>
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
<source>nothing to compare</source>
<translation>nichts zu vergleichen</translation>
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
<source>{count} of {total} strokes selected</source>
<translation>{count} von {total} Strichen ausgewählt</translation>
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
<source>Reading broke off. Open the page again, or press F5 where its lines are shown.</source>
<translation>Das Lesen brach ab. Öffnen Sie die Seite noch einmal, oder drücken Sie F5, wo ihre Zeilen stehen.</translation>
</message>
<message>
<source>{name}: no writing was found. Check that it shows the written side, sharp and near enough to read, and take the picture again.</source>
<translation>{name}: keine Schrift gefunden. Achten Sie darauf, dass die beschriebene Seite scharf und nah genug zu sehen ist, und fotografieren Sie sie noch einmal.</translation>
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
<source>No files were given. Name the photos, PDF or InkML files to mark.</source>
<translation>Es wurden keine Dateien genannt. Nennen Sie die Fotos, PDF- oder InkML-Dateien, die durchgesehen werden sollen.</translation>
</message>
<message>
<source>There is nothing at {path}. Check the name given to --confirmed.</source>
<translation>Unter {path} liegt nichts. Prüfen Sie den Namen hinter --confirmed.</translation>
</message>
<message>
<source>The folder {folder} cannot be written. Choose another folder with --out.</source>
<translation>In den Ordner {folder} kann nicht geschrieben werden. Wählen Sie mit --out einen anderen.</translation>
</message>
<message>
<source>{name}: its report could not be written. Make room in {folder}, or choose another folder.</source>
<translation>{name}: Der Bericht dazu konnte nicht geschrieben werden. Schaffen Sie Platz in {folder} oder wählen Sie einen anderen Ordner.</translation>
</message>
<message>
<source>{name} could not be marked because of a fault in this program. Please report it.</source>
<translation>{name} konnte wegen eines Fehlers in diesem Programm nicht durchgesehen werden. Bitte melden Sie ihn.</translation>
</message>
<message>
<source>{name} fits none of the pages. Name it after its page: NAME.json for NAME.jpg.</source>
<translation>{name} passt zu keiner der Seiten. Benennen Sie die Datei nach ihrer Seite: NAME.json zu NAME.jpg.</translation>
</message>
<message>
<source>The summary could not be written. Make room in {folder}, or choose another folder.</source>
<translation>Die Übersicht konnte nicht geschrieben werden. Schaffen Sie Platz in {folder} oder wählen Sie einen anderen Ordner.</translation>
</message>
<message>
<source>{name} would write over the picture itself. Choose another folder with --out.</source>
<translation>{name} würde das Bild selbst überschreiben. Wählen Sie mit --out einen anderen Ordner.</translation>
</message>
<message>
<source>{name} would write over the confirmed lines. Choose another folder with --out.</source>
<translation>{name} würde die bestätigten Zeilen überschreiben. Wählen Sie mit --out einen anderen Ordner.</translation>
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
<source>Save all &amp;marked pages as one PDF…</source>
<translation>Alle &amp;korrigierten Seiten als eine PDF speichern …</translation>
</message>
<message>
<source>Set</source>
<translation>Stapel</translation>
</message>
<message>
<source>Save all marked pages as one PDF</source>
<translation>Alle korrigierten Seiten als eine PDF speichern</translation>
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
<source>Not done</source>
<translation>Nicht erledigt</translation>
</message>
<message>
<source>1 page checked</source>
<translation>1 Seite durchgesehen</translation>
</message>
<message>
<source>{count} pages checked</source>
<translation>{count} Seiten durchgesehen</translation>
</message>
<message>
<source>What was found</source>
<translation>Was gefunden wurde</translation>
</message>
<message>
<source>en</source>
<translation>de</translation>
</message>
<message>
<source>Verdict</source>
<translation>Urteil</translation>
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
<source>Turn page right</source>
<translation>Blatt nach rechts drehen</translation>
</message>
<message>
<source>Turn page left</source>
<translation>Blatt nach links drehen</translation>
</message>
<message>
<source>One line of this page is confirmed or marked by you.</source>
<translation>Eine Zeile dieser Seite haben Sie bestätigt oder bewertet.</translation>
</message>
<message>
<source>{count} lines of this page are confirmed or marked by you.</source>
<translation>{count} Zeilen dieser Seite haben Sie bestätigt oder bewertet.</translation>
</message>
<message>
<source>Turning finds and reads all lines of the page anew; that work is put aside, and Undo brings it back.</source>
<translation>Nach dem Drehen werden alle Zeilen der Seite neu gesucht und gelesen; diese Arbeit wird beiseitegelegt, Rückgängig bringt sie zurück.</translation>
</message>
<message>
<source>&amp;Turn and read again</source>
<translation>&amp;Drehen und neu lesen</translation>
</message>
<message>
<source>&amp;Leave as it is</source>
<translation>&amp;So lassen</translation>
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
<source>part of a long line</source>
<translation>Teil einer langen Zeile</translation>
</message>
<message>
<source>part of a line</source>
<translation>Teil einer Zeile</translation>
</message>
<message>
<source>No doubtful line is left here; other pages have some ({keys}).</source>
<translation>Hier ist keine unsichere Zeile mehr; andere Seiten haben noch welche ({keys}).</translation>
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
<source>Another part of this line could not be read.</source>
<translation>Ein anderer Teil dieser Zeile konnte nicht gelesen werden.</translation>
</message>
<message>
<source>Goes on in line {number}.</source>
<translation>Geht in Zeile {number} weiter.</translation>
</message>
<message>
<source>Carries on line {number}.</source>
<translation>Setzt Zeile {number} fort.</translation>
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
<message>
<source>The answer is right.</source>
<translation>Das Ergebnis ist richtig.</translation>
</message>
<message>
<source>The answer is wrong.</source>
<translation>Das Ergebnis ist falsch.</translation>
</message>
<message>
<source>The answer follows from the slip on line {number} (ft).</source>
<translation>Das Ergebnis folgt aus dem Fehler in Zeile {number} (Folgefehler).</translation>
</message>
<message>
<source>The answer is right, but it comes from wrong working: see line {number}.</source>
<translation>Das Ergebnis ist richtig, kommt aber aus einem falschen Rechenweg: siehe Zeile {number}.</translation>
</message>
<message>
<source>The answer is right; the slip on line {number} was put right.</source>
<translation>Das Ergebnis ist richtig; der Fehler in Zeile {number} wurde berichtigt.</translation>
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
<source>A value is not rounded rightly.</source>
<translation>Ein Wert ist nicht richtig gerundet.</translation>
</message>
<message>
<source>It is to be given exactly.</source>
<translation>Es ist exakt anzugeben.</translation>
</message>
<message>
<source>It is to be given to {what}.</source>
<translation>Es ist auf {what} anzugeben.</translation>
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
<source>A bracket is still to be multiplied out.</source>
<translation>Eine Klammer ist noch auszumultiplizieren.</translation>
</message>
<message>
<source>A bracket is still to be collected.</source>
<translation>In einer Klammer ist noch zusammenzufassen.</translation>
</message>
<message>
<source>Like terms are still to be collected.</source>
<translation>Gleichartige Glieder sind noch zusammenzufassen.</translation>
</message>
<message>
<source>It is not multiplied out.</source>
<translation>Es ist nicht ausmultipliziert.</translation>
</message>
<message>
<source>A term is still to be worked out.</source>
<translation>Ein Glied ist noch auszurechnen.</translation>
</message>
<message>
<source>A common factor is left in a bracket.</source>
<translation>In einer Klammer steht noch ein gemeinsamer Faktor.</translation>
</message>
<message>
<source>The factors are to be with whole numbers.</source>
<translation>Die Faktoren sollen ganze Zahlen enthalten.</translation>
</message>
<message>
<source>It can be factorised further.</source>
<translation>Es lässt sich weiter in Faktoren zerlegen.</translation>
</message>
<message>
<source>The numbers in front are still to be worked out.</source>
<translation>Die Zahlen davor sind noch auszurechnen.</translation>
</message>
<message>
<source>The numbers in front are still to be multiplied.</source>
<translation>Die Zahlen davor sind noch zu multiplizieren.</translation>
</message>
<message>
<source>A fraction is not in its lowest terms.</source>
<translation>Ein Bruch ist nicht vollständig gekürzt.</translation>
</message>
<message>
<source>The fractions are to be put over one denominator.</source>
<translation>Die Brüche sind auf einen Nenner zu bringen.</translation>
</message>
<message>
<source>There is a fraction within the fraction.</source>
<translation>Im Bruch steht noch ein Bruch.</translation>
</message>
<message>
<source>The fraction can be cancelled further.</source>
<translation>Der Bruch lässt sich weiter kürzen.</translation>
</message>
<message>
<source>The number is still to be worked out.</source>
<translation>Die Zahl ist noch auszurechnen.</translation>
</message>
<message>
<source>A root still holds a square or higher power.</source>
<translation>Unter einer Wurzel steht noch eine Quadratzahl oder höhere Potenz.</translation>
</message>
<message>
<source>The denominator holds a root.</source>
<translation>Im Nenner steht eine Wurzel.</translation>
</message>
<message>
<source>Two roots are still to be multiplied.</source>
<translation>Zwei Wurzeln sind noch zu multiplizieren.</translation>
</message>
<message>
<source>True for all values</source>
<translation>Wahr für alle Werte</translation>
</message>
<message>
<source>True for all values with {a}.</source>
<translation>Wahr für alle Werte mit {a}.</translation>
</message>
<message>
<source>True for all values at which both sides are defined.</source>
<translation>Wahr für alle Werte, für die beide Seiten definiert sind.</translation>
</message>
<message>
<source>True: both sides have the same value.</source>
<translation>Wahr: beide Seiten haben denselben Wert.</translation>
</message>
<message>
<source>Not true: the sides are {a}.</source>
<translation>Nicht wahr: die Seiten haben die Werte {a}.</translation>
</message>
<message>
<source>Not true: the sides are different.</source>
<translation>Nicht wahr: die Seiten sind verschieden.</translation>
</message>
<message>
<source>Not true for all values: at {a} the sides are {b}.</source>
<translation>Nicht wahr für alle Werte: für {a} haben die Seiten die Werte {b}.</translation>
</message>
<message>
<source>Not true for all values: at {a} the sides are different.</source>
<translation>Nicht wahr für alle Werte: für {a} sind die Seiten verschieden.</translation>
</message>
<message>
<source>Multiplied out, the left is {a} and the right is {b}.</source>
<translation>Ausmultipliziert ist die linke Seite {a} und die rechte {b}.</translation>
</message>
<message>
<source>Over the denominator {a}, the numerator of the left is {b} and the right is {c}.</source>
<translation>Über dem Nenner {a} hat die linke Seite den Zähler {b} und die rechte {c}.</translation>
</message>
<message>
<source>Only the left has {a} and only the right has {b}.</source>
<translation>Nur links steht {a}, nur rechts {b}.</translation>
</message>
<message>
<source>Only the left has {a}.</source>
<translation>Nur links steht {a}.</translation>
</message>
<message>
<source>Only the right has {a}.</source>
<translation>Nur rechts steht {a}.</translation>
</message>
<message>
<source>It holds for {a}, as sampled.</source>
<translation>Nach Stichproben gilt es für {a}.</translation>
</message>
<message>
<source>It holds for {a}, as sampled at {number} points.</source>
<translation>Nach Stichproben an {number} Stellen gilt es für {a}.</translation>
</message>
<message>
<source>or</source>
<translation>oder</translation>
</message>
<message>
<source>no solution</source>
<translation>keine Lösung</translation>
</message>
<message>
<source>all real values</source>
<translation>alle reellen Werte</translation>
</message>
<message>
<source>every value of {a}</source>
<translation>jeder Wert von {a}</translation>
</message>
<message>
<source>every</source>
<translation>jedes</translation>
</message>
<message>
<source>({name} d.p.)</source>
<translation>({name} Nachkommastellen)</translation>
</message>
<message>
<source>({name} s.f.)</source>
<translation>({name} geltende Ziffern)</translation>
</message>
<message>
<source>let</source>
<translation>sei</translation>
</message>
<message>
<source>Check the reading first: with another reading of it the line follows.</source>
<translation>Prüfen Sie erst das Gelesene: mit einer anderen Lesart folgt die Zeile.</translation>
</message>
<message>
<source>Check the reading first: with another reading of line {number} the line follows.</source>
<translation>Prüfen Sie erst das Gelesene: mit einer anderen Lesart von Zeile {number} folgt die Zeile.</translation>
</message>
<message>
<source>Check the reading first: line {number} was hard to read.</source>
<translation>Prüfen Sie erst das Gelesene: Zeile {number} war schwer zu lesen.</translation>
</message>
<message>
<source>This line could not be read. Type what it says.</source>
<translation>Diese Zeile konnte nicht gelesen werden. Tippen Sie, wie sie lautet.</translation>
</message>
<message>
<source>{name} is an empty file. Copy it again from the camera or phone.</source>
<translation>{name} ist eine leere Datei. Kopieren Sie sie noch einmal von Kamera oder Telefon.</translation>
</message>
<message>
<source>{name} is an AVIF photo, which is not supported. Export it as JPEG and open that.</source>
<translation>{name} ist ein Foto in AVIF, das nicht geöffnet werden kann. Speichern Sie es als JPEG und öffnen Sie dieses.</translation>
</message>
<message>
<source>{name} is a GIF, which is not supported. Export it as PNG or JPEG and open that.</source>
<translation>{name} ist ein GIF, das nicht geöffnet werden kann. Speichern Sie es als PNG oder JPEG und öffnen Sie dieses.</translation>
</message>
<message>
<source>{name} is a HEIC photo, which needs the package pillow-heif. Install firstslip[heic], or export the photo as JPEG and open that.</source>
<translation>{name} ist ein Foto in HEIC; dafür ist das Paket pillow-heif nötig. Installieren Sie firstslip[heic] oder speichern Sie das Foto als JPEG und öffnen Sie dieses.</translation>
</message>
<message>
<source>{name} is a damaged HEIC file. Copy it again from the phone, or export it as JPEG.</source>
<translation>{name} ist eine beschädigte HEIC-Datei. Kopieren Sie sie noch einmal vom Telefon oder speichern Sie sie als JPEG.</translation>
</message>
<message>
<source>{name} is not a picture that can be opened. Choose a JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF file.</source>
<translation>{name} ist kein Bild, das sich öffnen lässt. Wählen Sie eine Datei in JPEG, PNG, TIFF, WebP, BMP, HEIC oder PDF.</translation>
</message>
<message>
<source>{name} holds text, not a picture. Choose a JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF file.</source>
<translation>{name} enthält Text, kein Bild. Wählen Sie eine Datei in JPEG, PNG, TIFF, WebP, BMP, HEIC oder PDF.</translation>
</message>
<message>
<source>{name} is a folder. Choose one or more JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF files inside it.</source>
<translation>{name} ist ein Ordner. Wählen Sie darin eine oder mehrere Dateien in JPEG, PNG, TIFF, WebP, BMP, HEIC oder PDF.</translation>
</message>
<message>
<source>{name} is locked with a password. Save a copy without the password and open that.</source>
<translation>{name} ist mit einem Kennwort geschützt. Speichern Sie eine Kopie ohne Kennwort und öffnen Sie diese.</translation>
</message>
<message>
<source>{name} could not be read from the disk. Copy it again and open the copy.</source>
<translation>{name} war vom Datenträger nicht zu lesen. Kopieren Sie die Datei noch einmal und öffnen Sie die Kopie.</translation>
</message>
<message>
<source>{name} is cut off: the end of the {other} file is missing. Copy it again from the camera or phone.</source>
<translation>{name} ist abgeschnitten: das Ende der Datei ({other}) fehlt. Kopieren Sie sie noch einmal von Kamera oder Telefon.</translation>
</message>
<message>
<source>{name} is a damaged {other} file. Copy it again from the camera or scanner, or save it anew as JPEG.</source>
<translation>{name} ist beschädigt ({other}). Kopieren Sie die Datei noch einmal von Kamera oder Scanner oder speichern Sie sie neu als JPEG.</translation>
</message>
<message>
<source>{name} is {a} GiB large; the limit is {b} GiB. Split it into smaller files and open those.</source>
<translation>{name} ist {a} GiB groß; höchstens {b} GiB sind möglich. Teilen Sie die Datei in kleinere und öffnen Sie diese.</translation>
</message>
<message>
<source>{name} has {number} pages; the limit is {count}. Split it and open the parts.</source>
<translation>{name} hat {number} Seiten; höchstens {count} sind möglich. Teilen Sie die Datei und öffnen Sie die Teile.</translation>
</message>
<message>
<source>{name} is {number} x {count} pixels, too small to hold writing. Choose the full-size photo.</source>
<translation>{name} hat {number} x {count} Pixel, zu wenig für Geschriebenes. Wählen Sie das Foto in voller Größe.</translation>
</message>
<message>
<source>{name} has {a} megapixels; the limit is {b}. Save it at a smaller size and open that.</source>
<translation>{name} hat {a} Megapixel; höchstens {b} sind möglich. Speichern Sie es kleiner und öffnen Sie dieses.</translation>
</message>
<message>
<source>{name} has no pages. Export it again and open the new file.</source>
<translation>{name} hat keine Seiten. Exportieren Sie die Datei noch einmal und öffnen Sie die neue.</translation>
</message>
<message>
<source>Page {number} of {name} is damaged. Export the PDF again, or open the page as a picture.</source>
<translation>Seite {number} von {name} ist beschädigt. Exportieren Sie die PDF-Datei noch einmal oder öffnen Sie die Seite als Bild.</translation>
</message>
<message>
<source>No writing was found on this page. Check that the photo shows the written side, sharp and near enough to read, and take it again.</source>
<translation>Auf dieser Seite wurde keine Schrift gefunden. Achten Sie darauf, dass die beschriebene Seite scharf und nah genug zu sehen ist, und fotografieren Sie sie noch einmal.</translation>
</message>
<message>
<source>One line alone cannot be merged. Choose the lines that belong together.</source>
<translation>Eine Zeile allein lässt sich nicht verbinden. Wählen Sie die Zeilen, die zusammengehören.</translation>
</message>
<message>
<source>This cut leaves one side without writing. Draw it between the two parts.</source>
<translation>Dieser Schnitt lässt auf einer Seite nichts Geschriebenes. Ziehen Sie ihn zwischen den beiden Teilen.</translation>
</message>
<message>
<source>There is no pen stroke within this outline. Draw it around the writing.</source>
<translation>In diesem Rahmen ist kein Stiftstrich. Ziehen Sie ihn um das Geschriebene.</translation>
</message>
<message>
<source>This outline is too small to hold a line. Draw it around the whole line.</source>
<translation>Dieser Rahmen ist zu klein für eine Zeile. Ziehen Sie ihn um die ganze Zeile.</translation>
</message>
<message>
<source>A cut needs two ends apart from each other. Draw it across the line.</source>
<translation>Ein Schnitt braucht zwei getrennte Enden. Ziehen Sie ihn quer durch die Zeile.</translation>
</message>
<message>
<source>This picture is too small to hold a line. Choose the full-size photo.</source>
<translation>Dieses Bild ist zu klein für eine Zeile. Wählen Sie das Foto in voller Größe.</translation>
</message>
<message>
<source>This outline lies beside the page. Draw it around writing on the page.</source>
<translation>Dieser Rahmen liegt neben der Seite. Ziehen Sie ihn um Geschriebenes auf der Seite.</translation>
</message>
<message>
<source>{name} is larger than {number} MB. Split the drawing into smaller ones.</source>
<translation>{name} ist größer als {number} MB. Teilen Sie die Zeichnung in kleinere.</translation>
</message>
<message>
<source>{name} cannot be read. Check the name and the folder, then open it again.</source>
<translation>{name} ist nicht zu lesen. Prüfen Sie Namen und Ordner und öffnen Sie die Datei noch einmal.</translation>
</message>
<message>
<source>{name} is XML but not InkML. Save the drawing again as InkML and open the new file.</source>
<translation>{name} ist XML, aber kein InkML. Speichern Sie die Zeichnung noch einmal als InkML und öffnen Sie die neue Datei.</translation>
</message>
<message>
<source>{name} holds no pen strokes. Draw the working first, then save it as InkML.</source>
<translation>{name} enthält keine Stiftstriche. Zeichnen Sie erst die Rechnung und speichern Sie sie dann als InkML.</translation>
</message>
<message>
<source>{name} cannot be saved there. Choose another folder or free some space.</source>
<translation>{name} kann dort nicht gespeichert werden. Wählen Sie einen anderen Ordner oder schaffen Sie Platz.</translation>
</message>
<message>
<source>{name} is nested too deep for InkML. Save the drawing again as InkML and open the new file.</source>
<translation>{name} ist für InkML zu tief verschachtelt. Speichern Sie die Zeichnung noch einmal als InkML und öffnen Sie die neue Datei.</translation>
</message>
<message>
<source>{name} declares XML entities, which are not read for safety. Save the drawing again as InkML and open the new file.</source>
<translation>{name} vereinbart XML-Entitäten, die zur Sicherheit nicht gelesen werden. Speichern Sie die Zeichnung noch einmal als InkML und öffnen Sie die neue Datei.</translation>
</message>
<message>
<source>{name} is not well-formed XML (line {number}). Save the drawing again as InkML and open the new file.</source>
<translation>{name} ist kein wohlgeformtes XML (Zeile {number}). Speichern Sie die Zeichnung noch einmal als InkML und öffnen Sie die neue Datei.</translation>
</message>
<message>
<source>{name} is in a character encoding that cannot be read. Save the drawing again as InkML and open the new file.</source>
<translation>{name} hat eine Zeichenkodierung, die nicht zu lesen ist. Speichern Sie die Zeichnung noch einmal als InkML und öffnen Sie die neue Datei.</translation>
</message>
<message>
<source>The traces of {name} have no X and Y. Save the drawing again as InkML and open the new file.</source>
<translation>Die Striche in {name} haben kein X und Y. Speichern Sie die Zeichnung noch einmal als InkML und öffnen Sie die neue Datei.</translation>
</message>
<message>
<source>A trace of {name} lies beyond any page. Save the drawing again as InkML and open the new file.</source>
<translation>Ein Strich in {name} liegt außerhalb jeder Seite. Speichern Sie die Zeichnung noch einmal als InkML und öffnen Sie die neue Datei.</translation>
</message>
<message>
<source>{name} has more than {number} points. Split the drawing into smaller ones.</source>
<translation>{name} hat mehr als {number} Messpunkte. Teilen Sie die Zeichnung in kleinere.</translation>
</message>
<message>
<source>Trace {number} of {name} does not fit its trace format. Save the drawing again as InkML and open the new file.</source>
<translation>Strich {number} in {name} passt nicht zu seinem Strichformat. Speichern Sie die Zeichnung noch einmal als InkML und öffnen Sie die neue Datei.</translation>
</message>
<message>
<source>The reader's weights cannot be loaded. Install Firstslip again.</source>
<translation>Die Gewichte der Schrifterkennung lassen sich nicht laden. Installieren Sie Firstslip noch einmal.</translation>
</message>
<message>
<source>The reader's weights do not fit their vocabulary. Install Firstslip again.</source>
<translation>Die Gewichte der Schrifterkennung passen nicht zu ihrem Vokabular. Installieren Sie Firstslip noch einmal.</translation>
</message>
<message>
<source>The list of the reader's weights, SHA256SUMS, cannot be read. Install Firstslip again.</source>
<translation>Die Liste der Gewichte der Schrifterkennung, SHA256SUMS, ist nicht zu lesen. Installieren Sie Firstslip noch einmal.</translation>
</message>
<message>
<source>The reader's weights {name} are missing. Install Firstslip again.</source>
<translation>Die Gewichte der Schrifterkennung {name} fehlen. Installieren Sie Firstslip noch einmal.</translation>
</message>
<message>
<source>The reader's weights {name} are damaged: their SHA-256 is not the listed one. Install Firstslip again.</source>
<translation>Die Gewichte der Schrifterkennung {name} sind beschädigt: ihr SHA-256 ist nicht der verzeichnete. Installieren Sie Firstslip noch einmal.</translation>
</message>
<message>
<source>There is nothing to show yet.</source>
<translation>Es gibt noch nichts zu zeigen.</translation>
</message>
<message>
<source>This line is too long to show. Split it into lines.</source>
<translation>Diese Zeile ist zu lang zum Zeigen. Teilen Sie sie in mehrere.</translation>
</message>
<message>
<source>This line is nested too deeply to show.</source>
<translation>Diese Zeile ist zu tief verschachtelt zum Zeigen.</translation>
</message>
<message>
<source>This LaTeX is not complete yet.</source>
<translation>Dieses LaTeX ist noch nicht vollständig.</translation>
</message>
<message>
<source>Typed working</source>
<translation>Getippte Rechnung</translation>
</message>
<message>
<source>Typed working {number}</source>
<translation>Getippte Rechnung {number}</translation>
</message>
<message>
<source>Pen page</source>
<translation>Stiftseite</translation>
</message>
<message>
<source>Pen page {number}</source>
<translation>Stiftseite {number}</translation>
</message>
<message>
<source>There is nothing written with the pen on this page. Take a page for the pen (Ctrl+Shift+N) first.</source>
<translation>Auf dieser Seite ist nichts mit dem Stift geschrieben. Nehmen Sie erst eine Seite für den Stift (Strg+Umschalt+N).</translation>
</message>
<message>
<source>Go through this line term by term, beside the line before.</source>
<translation>Diese Zeile Glied für Glied mit der Zeile davor vergleichen.</translation>
</message>
<message>
<source>Look at {a}.</source>
<translation>Hier genauer hinsehen: {a}.</translation>
</message>
<message>
<source>Work this number out again.</source>
<translation>Diese Zahl noch einmal ausrechnen.</translation>
</message>
<message>
<source>Look at what was cancelled: is it a factor of the whole top and of the whole bottom?</source>
<translation>Was wurde gekürzt? Ist es ein Faktor des ganzen Zählers und des ganzen Nenners?</translation>
</message>
<message>
<source>Compare this with the line before: it should have been carried over as it was.</source>
<translation>Mit der Zeile davor vergleichen: das hätte unverändert übernommen werden müssen.</translation>
</message>
<message>
<source>Look again at the rule for the derivative of this term.</source>
<translation>Die Ableitungsregel für dieses Glied noch einmal ansehen.</translation>
</message>
<message>
<source>Something was divided: was every term divided?</source>
<translation>Hier wurde dividiert: wurde jedes Glied dividiert?</translation>
</message>
<message>
<source>Count the terms: one is missing.</source>
<translation>Die Glieder zählen: eines fehlt.</translation>
</message>
<message>
<source>Count the terms: there is one too many.</source>
<translation>Die Glieder zählen: es ist eines zu viel.</translation>
</message>
<message>
<source>Multiply the brackets out again and compare with the line before.</source>
<translation>Die Klammern wieder ausmultiplizieren und mit der Zeile davor vergleichen.</translation>
</message>
<message>
<source>Look again at how one divides by a fraction.</source>
<translation>Noch einmal nachsehen, wie man durch einen Bruch dividiert.</translation>
</message>
<message>
<source>Look again at what the factor does to the top and to the bottom.</source>
<translation>Noch einmal überlegen, was der Faktor mit Zähler und Nenner macht.</translation>
</message>
<message>
<source>Look again at how fractions are added or split: what do they have in common?</source>
<translation>Noch einmal überlegen, wie man Brüche addiert oder aufteilt: was haben sie gemeinsam?</translation>
</message>
<message>
<source>Can a number be taken out of this function?</source>
<translation>Darf man eine Zahl aus dieser Funktion herausziehen?</translation>
</message>
<message>
<source>Does this function spread over a sum?</source>
<translation>Verteilt sich diese Funktion auf die Glieder einer Summe?</translation>
</message>
<message>
<source>Look again at the rule for the integral of this term.</source>
<translation>Die Integrationsregel für dieses Glied noch einmal ansehen.</translation>
</message>
<message>
<source>Look at the direction of the sign: was a negative number multiplied or divided by?</source>
<translation>Auf die Richtung des Ungleichheitszeichens achten: wurde mit einer negativen Zahl multipliziert oder durch sie dividiert?</translation>
</message>
<message>
<source>Look for a letter that was lost.</source>
<translation>Eine Variable ist verloren gegangen: welche?</translation>
</message>
<message>
<source>Look at how like terms were collected, with their signs.</source>
<translation>Noch einmal ansehen, wie gleichartige Glieder zusammengefasst wurden, samt Vorzeichen.</translation>
</message>
<message>
<source>Look again at the law of logarithms that was used.</source>
<translation>Das benutzte Logarithmengesetz noch einmal ansehen.</translation>
</message>
<message>
<source>Something was multiplied: was every term multiplied?</source>
<translation>Hier wurde multipliziert: wurde jedes Glied multipliziert?</translation>
</message>
<message>
<source>Was the same done to both sides?</source>
<translation>Wurde auf beiden Seiten dasselbe gemacht?</translation>
</message>
<message>
<source>Which operation comes first here?</source>
<translation>Welche Rechnung kommt hier zuerst?</translation>
</message>
<message>
<source>Work this step out again.</source>
<translation>Diese Umformung noch einmal durchführen.</translation>
</message>
<message>
<source>Look at the power: which law of indices is used here?</source>
<translation>Auf die Hochzahl achten: welches Potenzgesetz gilt hier?</translation>
</message>
<message>
<source>Multiply the two factors again.</source>
<translation>Die beiden Faktoren noch einmal multiplizieren.</translation>
</message>
<message>
<source>When does a product split into its factors?</source>
<translation>Wann darf man bei einem Produkt die Faktoren einzeln betrachten?</translation>
</message>
<message>
<source>Does another value make the line before true as well?</source>
<translation>Erfüllt noch ein anderer Wert die Zeile davor?</translation>
</message>
<message>
<source>What is the root of a square for a negative value?</source>
<translation>Was ist die Wurzel aus einem Quadrat, wenn der Wert negativ ist?</translation>
</message>
<message>
<source>Does a root spread over a sum?</source>
<translation>Verteilt sich eine Wurzel auf die Glieder einer Summe?</translation>
</message>
<message>
<source>Look at the sign.</source>
<translation>Auf das Vorzeichen achten.</translation>
</message>
<message>
<source>Look at the sign in front of the bracket.</source>
<translation>Auf das Vorzeichen vor der Klammer achten.</translation>
</message>
<message>
<source>A term changed sides: what happens to its sign?</source>
<translation>Ein Glied hat die Seite gewechselt: was geschieht mit seinem Vorzeichen?</translation>
</message>
<message>
<source>Look at the signs of the two factors.</source>
<translation>Auf die Vorzeichen der beiden Faktoren achten.</translation>
</message>
<message>
<source>A power of a sum: which terms does it have?</source>
<translation>Die Potenz einer Summe: welche Glieder hat sie?</translation>
</message>
<message>
<source>Are these like terms?</source>
<translation>Sind diese Glieder gleichartig?</translation>
</message>
<message>
<source>Look at the operation between the two.</source>
<translation>Auf das Rechenzeichen zwischen den beiden achten.</translation>
</message>
<message>
<source>{a} is missing: {sentence}</source>
<translation>Es fehlt {a}, denn {sentence}</translation>
</message>
<message>
<source>Line {number} is the line of the scheme or its equivalent.</source>
<translation>Zeile {number} ist die Zeile des Schemas oder gleichwertig.</translation>
</message>
<message>
<source>Line {number} implies it.</source>
<translation>Es ist in Zeile {number} mit enthalten.</translation>
</message>
<message>
<source>Line {number} gives a rounded value where the scheme's is exact; the teacher decides.</source>
<translation>Zeile {number} gibt einen gerundeten Wert, wo das Schema einen exakten hat; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} gives an exact value where the scheme wants a decimal (awrt); the teacher decides.</source>
<translation>Zeile {number} gibt einen exakten Wert, wo das Schema eine Dezimalzahl verlangt (awrt); die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} could not be compared with the scheme; the teacher decides.</source>
<translation>Zeile {number} ließ sich nicht mit dem Schema vergleichen; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} is equivalent but written in another form than the scheme's; the teacher decides.</source>
<translation>Zeile {number} ist gleichwertig, aber in anderer Form als im Schema; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} has the right value but is not written as in the scheme.</source>
<translation>Zeile {number} hat den richtigen Wert, steht aber nicht so da wie im Schema.</translation>
</message>
<message>
<source>Line {number} has the right value but is not written expanded.</source>
<translation>Zeile {number} hat den richtigen Wert, ist aber nicht ausmultipliziert.</translation>
</message>
<message>
<source>Line {number} has the right value but is not written factorised.</source>
<translation>Zeile {number} hat den richtigen Wert, ist aber nicht faktorisiert.</translation>
</message>
<message>
<source>Line {number} has the right value but is not written simplest.</source>
<translation>Zeile {number} hat den richtigen Wert, steht aber nicht in einfachster Form.</translation>
</message>
<message>
<source>Line {number} has the right value but is not written awrt.</source>
<translation>Zeile {number} hat den richtigen Wert, aber nicht als gerundete Dezimalzahl (awrt).</translation>
</message>
<message>
<source>Line {number} shows it among its terms.</source>
<translation>Zeile {number} enthält es unter ihren Gliedern.</translation>
</message>
<message>
<source>The scheme asks for part of a line, and line {number} has a slip in it; the teacher decides.</source>
<translation>Das Schema verlangt einen Teil einer Zeile, und Zeile {number} enthält einen Fehler; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} is the special case of the scheme.</source>
<translation>Zeile {number} ist der Sonderfall des Schemas.</translation>
</message>
<message>
<source>Yet the question was misread; the teacher decides.</source>
<translation>Doch die Aufgabe wurde falsch gelesen; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>It is right, but comes from wrong working, which earns nothing by itself.</source>
<translation>Sie ist richtig, kommt aber aus einem falschen Rechenweg und zählt für sich allein nicht.</translation>
</message>
<message>
<source>It does not follow from the working; the teacher decides.</source>
<translation>Sie folgt nicht aus dem Rechenweg; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>It comes from a wrong line; the teacher decides.</source>
<translation>Sie kommt aus einer falschen Zeile; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>The solution is not free of errors (cso): see line {number}.</source>
<translation>Der Lösungsweg ist nicht fehlerfrei (cso): siehe Zeile {number}.</translation>
</message>
<message>
<source>Line {number} is right and implies it, as the scheme allows.</source>
<translation>Zeile {number} ist richtig und enthält es mit, wie das Schema es zulässt.</translation>
</message>
<message>
<source>Line {number} is right, but the scheme wants the working to be shown.</source>
<translation>Zeile {number} ist richtig, aber das Schema verlangt einen sichtbaren Rechenweg.</translation>
</message>
<message>
<source>Line {number} is right and follows from working shown, so it implies this.</source>
<translation>Zeile {number} ist richtig und folgt aus dem gezeigten Rechenweg, enthält dies also mit.</translation>
</message>
<message>
<source>Line {number} is right and may imply it, but the working is not shown; the teacher decides.</source>
<translation>Zeile {number} ist richtig und enthält es vielleicht mit, aber der Rechenweg fehlt; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} has a slip.</source>
<translation>Zeile {number} enthält einen Fehler.</translation>
</message>
<message>
<source>Line {number} follows from the candidate's own wrong line by the step that the scheme asks for; a method is not lost by a slip.</source>
<translation>Zeile {number} folgt aus der eigenen falschen Zeile durch die Umformung, die das Schema verlangt; ein Fehler kostet den Methodenpunkt nicht.</translation>
</message>
<message>
<source>Line {number} follows from the candidate's own wrong line, but this is correct answer only (cao).</source>
<translation>Zeile {number} folgt aus der eigenen falschen Zeile, aber hier zählt nur das richtige Ergebnis (cao).</translation>
</message>
<message>
<source>Line {number} follows from the candidate's own wrong line, but this is not a follow-through mark.</source>
<translation>Zeile {number} folgt aus der eigenen falschen Zeile, aber Folgefehler zählen bei diesem Punkt nicht.</translation>
</message>
<message>
<source>Line {number} follows from the candidate's own wrong line, but its value cannot be, by what is given.</source>
<translation>Zeile {number} folgt aus der eigenen falschen Zeile, aber ihr Wert ist nach dem Gegebenen nicht möglich.</translation>
</message>
<message>
<source>Line {number} follows from the candidate's own wrong line (ft).</source>
<translation>Zeile {number} folgt aus der eigenen falschen Zeile (Folgefehler).</translation>
</message>
<message>
<source>Line {number} is of the form asked, but it or a line before it could not be judged; the teacher decides.</source>
<translation>Zeile {number} hat die verlangte Form, aber sie oder eine Zeile davor ließ sich nicht beurteilen; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} goes on from a misread question; the teacher decides.</source>
<translation>Zeile {number} rechnet mit einer falsch gelesenen Aufgabe weiter; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} follows from the question as misread.</source>
<translation>Zeile {number} folgt aus der Aufgabe, wie sie falsch gelesen wurde.</translation>
</message>
<message>
<source>The method is not lost.</source>
<translation>Der Methodenpunkt bleibt.</translation>
</message>
<message>
<source>This mark is for the correct answer only.</source>
<translation>Dieser Punkt gilt nur dem richtigen Ergebnis.</translation>
</message>
<message>
<source>Line {number} is of the form asked but has a slip; the teacher decides.</source>
<translation>Zeile {number} hat die verlangte Form, enthält aber einen Fehler; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} has more wrong than one term.</source>
<translation>In Zeile {number} ist mehr als ein Glied falsch.</translation>
</message>
<message>
<source>Line {number} shows the method; only its term {a} is wrong.</source>
<translation>Zeile {number} zeigt die Methode; nur das Glied {a} ist falsch.</translation>
</message>
<message>
<source>Line {number} shows the method; only its term (missing) is wrong.</source>
<translation>Zeile {number} zeigt die Methode; nur ein Glied fehlt.</translation>
</message>
<message>
<source>Line {number} has one wrong term, {a}, which may be a slip or a wrong method; the teacher decides.</source>
<translation>In Zeile {number} ist das Glied {a} falsch; das kann ein Flüchtigkeitsfehler oder eine falsche Methode sein; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} has one wrong term, (missing), which may be a slip or a wrong method; the teacher decides.</source>
<translation>In Zeile {number} fehlt ein Glied; das kann ein Flüchtigkeitsfehler oder eine falsche Methode sein; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} has a further slip after an earlier one; the teacher decides.</source>
<translation>Zeile {number} enthält nach einem früheren Fehler einen weiteren; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Line {number} is the line of the scheme but for one term; the teacher decides whether the method is shown.</source>
<translation>Zeile {number} ist bis auf ein Glied die Zeile des Schemas; die Lehrkraft entscheidet, ob die Methode zu sehen ist.</translation>
</message>
<message>
<source>Line {number} is beyond the line asked for and right but for one term; the teacher decides whether the method is shown.</source>
<translation>Zeile {number} geht über die verlangte Zeile hinaus und ist bis auf ein Glied richtig; die Lehrkraft entscheidet, ob die Methode zu sehen ist.</translation>
</message>
<message>
<source>Line {number} follows from the candidate's own wrong line but has another form than the scheme's, so the rest may have become easier; the teacher decides.</source>
<translation>Zeile {number} folgt aus der eigenen falschen Zeile, hat aber eine andere Form als im Schema, sodass der Rest leichter geworden sein kann; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>Working is shown, so the marks for an answer alone do not apply.</source>
<translation>Der Rechenweg ist da, also gelten die Punkte für ein bloßes Ergebnis nicht.</translation>
</message>
<message>
<source>No working is shown: the N marks stand for the answer.</source>
<translation>Es ist kein Rechenweg da: für das Ergebnis gelten die N-Punkte.</translation>
</message>
<message>
<source>The scheme itself gives as much.</source>
<translation>Das Schema selbst gibt ebenso viel.</translation>
</message>
<message>
<source>The marks left to the teacher may give as much; the teacher decides.</source>
<translation>Die Punkte, die der Lehrkraft überlassen sind, geben vielleicht ebenso viel; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>It stands in place of the marks above.</source>
<translation>Er gilt anstelle der Punkte darüber.</translation>
</message>
<message>
<source>These marks are a suggestion; the teacher decides.</source>
<translation>Diese Punkte sind ein Vorschlag; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>The scheme describes this mark in words; the teacher decides.</source>
<translation>Das Schema beschreibt diesen Punkt in Worten; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>The time for marking ran out; the teacher decides.</source>
<translation>Die Zeit für die Punktevergabe ist abgelaufen; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>This mark could not be weighed; the teacher decides. See the log.</source>
<translation>Dieser Punkt ließ sich nicht abwägen; die Lehrkraft entscheidet. Siehe Protokoll.</translation>
</message>
<message>
<source>No line shows it.</source>
<translation>In keiner Zeile ist es zu sehen.</translation>
</message>
<message>
<source>The final answer is not that of the scheme.</source>
<translation>Das Endergebnis ist nicht das des Schemas.</translation>
</message>
<message>
<source>Line {number} gives another answer; the teacher decides which attempt counts.</source>
<translation>Zeile {number} gibt ein anderes Ergebnis; die Lehrkraft entscheidet, welcher Versuch zählt.</translation>
</message>
<message>
<source>What follows it is ignored (isw).</source>
<translation>Was danach kommt, wird nicht beachtet (isw).</translation>
</message>
<message>
<source>The misread (MR) loses this mark.</source>
<translation>Das falsche Lesen der Aufgabe (MR) kostet diesen Punkt.</translation>
</message>
<message>
<source>The teacher decides how much it loses.</source>
<translation>Die Lehrkraft entscheidet, wie viel das kostet.</translation>
</message>
<message>
<source>Line {number} could not be read; the teacher decides.</source>
<translation>Zeile {number} war nicht zu lesen; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>The answer is right, so another valid method may be there; the teacher decides.</source>
<translation>Das Ergebnis ist richtig, also liegt vielleicht ein anderer gültiger Weg vor; die Lehrkraft entscheidet.</translation>
</message>
<message>
<source>It needs the {name} before it, which is not earned.</source>
<translation>Er setzt den Punkt {name} davor voraus, und der ist nicht verdient.</translation>
</message>
<message>
<source>It needs the {name} before it, on which the teacher decides.</source>
<translation>Er setzt den Punkt {name} davor voraus, und über den entscheidet die Lehrkraft.</translation>
</message>
<message>
<source>Entry {number} of the scheme: {sentence}</source>
<translation>Eintrag {number} des Schemas: {sentence}</translation>
</message>
<message>
<source>Line {number} of the scheme: {sentence}</source>
<translation>Zeile {number} des Schemas: {sentence}</translation>
</message>
<message>
<source>"scheme" is not a list of 1 to {number} marks. Write it like [{"mark": "M1", "line": "2x=10"}, {"mark": "A1", "final": "x=5"}].</source>
<translation>"scheme" ist keine Liste von 1 bis {number} Punkten. Schreiben Sie sie wie [{"mark": "M1", "line": "2x=10"}, {"mark": "A1", "final": "x=5"}].</translation>
</message>
<message>
<source>it is not an object. Write it like {"mark": "M1", "line": "2x=10"}.</source>
<translation>er ist kein Objekt. Schreiben Sie ihn wie {"mark": "M1", "line": "2x=10"}.</translation>
</message>
<message>
<source>"{name}" is not known here. Use only: {other}.</source>
<translation>"{name}" ist hier nicht bekannt. Benutzen Sie nur: {other}.</translation>
</message>
<message>
<source>"mark" is missing or wrong. Write M, A or B and how many marks, such as "M1" or "A2"; dM1 for one that depends on the M before, N1 for an answer without working, SC B1 for a special case.</source>
<translation>"mark" fehlt oder ist falsch. Schreiben Sie M, A oder B und die Zahl der Punkte, etwa "M1" oder "A2"; dM1 für einen Punkt, der vom M davor abhängt, N1 für ein Ergebnis ohne Rechenweg, SC B1 für einen Sonderfall.</translation>
</message>
<message>
<source>N is for an answer without working and is no special case. Write N1 or SC B1.</source>
<translation>N steht für ein Ergebnis ohne Rechenweg und ist kein Sonderfall. Schreiben Sie N1 oder SC B1.</translation>
</message>
<message>
<source>"form" is not known. Use one of: {other}.</source>
<translation>"form" ist nicht bekannt. Benutzen Sie eine von diesen: {other}.</translation>
</message>
<message>
<source>"for" is not a string. Say in words what the mark is for, or leave it out.</source>
<translation>"for" ist kein Text. Sagen Sie in Worten, wofür der Punkt ist, oder lassen Sie es weg.</translation>
</message>
<message>
<source>"ft" and "cao" or "cso" exclude each other. Keep one of them.</source>
<translation>"ft" und "cao" oder "cso" schließen einander aus. Behalten Sie eines davon.</translation>
</message>
<message>
<source>"implied" is not true, false or null. Choose one, or leave it out.</source>
<translation>"implied" ist weder true noch false noch null. Wählen Sie eines davon oder lassen Sie es weg.</translation>
</message>
<message>
<source>"{name}" is not true or false. Choose one, or leave it out.</source>
<translation>"{name}" ist weder true noch false. Wählen Sie eines davon oder lassen Sie es weg.</translation>
</message>
<message>
<source>it has both "line" and "final". Keep "final" for the final answer, "line" for any other line.</source>
<translation>er hat "line" und "final" zugleich. Behalten Sie "final" für das Endergebnis, "line" für jede andere Zeile.</translation>
</message>
<message>
<source>nothing says what earns it. Give "line", "final", or words in "for".</source>
<translation>nichts sagt, womit er verdient wird. Geben Sie "line", "final" oder Worte in "for" an.</translation>
</message>
<message>
<source>"form" needs a "line" or a "final" beside it. Add one, or leave "form" out.</source>
<translation>"form" braucht daneben ein "line" oder "final". Fügen Sie eines hinzu oder lassen Sie "form" weg.</translation>
</message>
<message>
<source>"{name}" is not LaTeX. Give one line as a string, or a list of lines that will do.</source>
<translation>"{name}" ist kein LaTeX. Geben Sie eine Zeile als Text an oder eine Liste von Zeilen, von denen jede genügt.</translation>
</message>
<message>
<source>"{name}" cannot be read. {sentence}</source>
<translation>"{name}" ist nicht zu lesen. {sentence}</translation>
</message>
<message>
<source>"{name}" is nested too deeply. Shorten it.</source>
<translation>"{name}" ist zu tief verschachtelt. Kürzen Sie es.</translation>
</message>
<message>
<source>"{name}" holds only words. Give mathematics as LaTeX, and words in "for".</source>
<translation>"{name}" enthält nur Worte. Geben Sie Mathematik als LaTeX an und Worte in "for".</translation>
</message>
<message>
<source>it depends on a method mark, but there is none before it. Write M1 for the first one.</source>
<translation>er hängt von einem Methodenpunkt ab, aber davor steht keiner. Schreiben Sie M1 für den ersten.</translation>
</message>
<message>
<source>"depends_on" names no entry before it. Give the mark, such as "M1" for the nearest M1 before, or its place in the list counted from 0, or null for none.</source>
<translation>"depends_on" nennt keinen Eintrag davor. Geben Sie den Punkt an, etwa "M1" für den nächsten M1 davor, oder seine Stelle in der Liste, von 0 an gezählt, oder null für keinen.</translation>
</message>
<message>
<source>Line {number} of the scheme begins with no mark. Write it like M1 2x=10 or A1 final x=5; a mark is M, A, B or N and a number, with d before it or SC.</source>
<translation>Zeile {number} des Schemas beginnt nicht mit einem Punkt. Schreiben Sie sie wie M1 2x=10 oder A1 final x=5; ein Punkt ist M, A, B oder N und eine Zahl, mit d davor oder SC.</translation>
</message>
<message>
<source>Line {number} of the scheme says {total} marks, but those above add up to {count}. Correct one of them.</source>
<translation>Zeile {number} des Schemas nennt {total} Punkte, aber die darüber ergeben zusammen {count}. Berichtigen Sie eines davon.</translation>
</message>
<message>
<source>Line {number} of the scheme: {name} names no mark. Write needs M1, or needs nothing.</source>
<translation>Zeile {number} des Schemas: {name} nennt keinen Punkt. Schreiben Sie needs M1 oder needs nothing.</translation>
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
<translation>zweimal {a} ist {b}</translation>
</message>
<message>
<source>{a} divided by {b} is {c}</source>
<translation>{a} geteilt durch {b} ist {c}</translation>
</message>
<message>
<source>divided by {a}, this is {b}</source>
<translation>durch {a} geteilt ist das {b}</translation>
</message>
<message>
<source>{a} to the power {b} is {c}</source>
<translation>{a} hoch {b} ist {c}</translation>
</message>
<message>
<source>multiplied out, {a} to the power {b} has the term {c}</source>
<translation>ausmultipliziert enthält {a} hoch {b} das Glied {c}</translation>
</message>
<message>
<source>multiplied out, {a} is {b}</source>
<translation>ausmultipliziert ist {a} gleich {b}</translation>
</message>
<message>
<source>multiplied out, {a} gives the line before</source>
<translation>ausmultipliziert ergibt {a} die Zeile davor</translation>
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
<source>a number by itself does not change, so its derivative is 0</source>
<translation>eine Zahl allein ändert sich nicht, also ist ihre Ableitung 0</translation>
</message>
<message>
<source>{a} is {b}</source>
<translation>{a} ist {b}</translation>
</message>
<message>
<source>{a} is positive</source>
<translation>{a} ist positiv</translation>
</message>
<message>
<source>{a} is negative</source>
<translation>{a} ist negativ</translation>
</message>
<message>
<source>{a} taken away is {b}</source>
<translation>{a} abgezogen ergibt {b}</translation>
</message>
<message>
<source>{sentence}, which is {a} here</source>
<translation>{sentence}, was hier {a} ergibt</translation>
</message>
<message>
<source>{sentence}, so this is {a}</source>
<translation>{sentence}, also steht hier {a}</translation>
</message>
<message>
<source>{sentence}, so {more}</source>
<translation>{sentence}, also: {more}</translation>
</message>
<message>
<source>{sentence}, and {more}</source>
<translation>{sentence}, und {more}</translation>
</message>
<message>
<source>{sentence} and belongs in it: {more}</source>
<translation>{sentence}, das gehört dazu: {more}</translation>
</message>
<message>
<source>the product comes twice: {sentence}</source>
<translation>das Produkt kommt zweimal vor: {sentence}</translation>
</message>
<message>
<source>the minus before the bracket turns {a} into {b}</source>
<translation>das Minus vor der Klammer macht aus {a} ein {b}</translation>
</message>
<message>
<source>the minus before the bracket turns each sign</source>
<translation>das Minus vor der Klammer kehrt jedes Vorzeichen um</translation>
</message>
<message>
<source>the minus in front turns {a} into {b}</source>
<translation>das Minus davor macht aus {a} ein {b}</translation>
</message>
<message>
<source>the bar works as a bracket, so the minus before it turns {a} into {b}</source>
<translation>der Bruchstrich wirkt wie eine Klammer, also macht das Minus davor aus {a} ein {b}</translation>
</message>
<message>
<source>no factor is negative, so the product is positive</source>
<translation>kein Faktor ist negativ, also ist das Produkt positiv</translation>
</message>
<message>
<source>one factor is negative, so the product is negative</source>
<translation>ein Faktor ist negativ, also ist das Produkt negativ</translation>
</message>
<message>
<source>both factors are negative, so the product is positive</source>
<translation>beide Faktoren sind negativ, also ist das Produkt positiv</translation>
</message>
<message>
<source>{number} of the {count} factors is negative, so the product is negative</source>
<translation>{number} der {count} Faktoren ist negativ, also ist das Produkt negativ</translation>
</message>
<message>
<source>{number} of the {count} factors are negative, so the product is negative</source>
<translation>{number} der {count} Faktoren sind negativ, also ist das Produkt negativ</translation>
</message>
<message>
<source>{number} of the {count} factors are negative, so the product is positive</source>
<translation>{number} der {count} Faktoren sind negativ, also ist das Produkt positiv</translation>
</message>
<message>
<source>{number} negative factors make a positive product</source>
<translation>{number} negative Faktoren ergeben ein positives Produkt</translation>
</message>
<message>
<source>1 negative factors make a negative product</source>
<translation>1 negativer Faktor ergibt ein negatives Produkt</translation>
</message>
<message>
<source>{number} negative factors make a negative product</source>
<translation>{number} negative Faktoren ergeben ein negatives Produkt</translation>
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
<translation>Minus und Minus ergibt Plus</translation>
</message>
<message>
<source>a square is not negative</source>
<translation>ein Quadrat ist nicht negativ</translation>
</message>
<message>
<source>the minus stands before the square</source>
<translation>das Minus steht vor dem Quadrat</translation>
</message>
<message>
<source>the power comes before the minus: {sentence}</source>
<translation>die Potenz kommt vor dem Minus: {sentence}</translation>
</message>
<message>
<source>both signs are the other way round: multiplied out, this gives the line before</source>
<translation>beide Vorzeichen sind vertauscht: ausmultipliziert ergibt das die Zeile davor</translation>
</message>
<message>
<source>with the other sign the line follows</source>
<translation>mit dem anderen Vorzeichen folgt die Zeile</translation>
</message>
<message>
<source>with the other sign the line agrees with the line before</source>
<translation>mit dem anderen Vorzeichen stimmt die Zeile mit der Zeile davor überein</translation>
</message>
<message>
<source>with this sign {a} makes the line before true</source>
<translation>mit diesem Vorzeichen erfüllt {a} die Zeile davor</translation>
</message>
<message>
<source>with {a} in place of {b} the line follows</source>
<translation>mit {a} statt {b} folgt die Zeile</translation>
</message>
<message>
<source>with {a} in place of {b} the line agrees with the line before</source>
<translation>mit {a} statt {b} stimmt die Zeile mit der Zeile davor überein</translation>
</message>
<message>
<source>with this {a} makes the line before true</source>
<translation>damit erfüllt {a} die Zeile davor</translation>
</message>
<message>
<source>the letter {a} was lost</source>
<translation>die Variable {a} ging verloren</translation>
</message>
<message>
<source>the letter is {a}, not {b}</source>
<translation>die Variable heißt {a}, nicht {b}</translation>
</message>
<message>
<source>the letter is missing: {sentence}</source>
<translation>die Variable fehlt: {sentence}</translation>
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
<translation>hier werden die beiden addiert</translation>
</message>
<message>
<source>here the two are multiplied</source>
<translation>hier werden die beiden multipliziert</translation>
</message>
<message>
<source>no root is taken here</source>
<translation>hier wird keine Wurzel gezogen</translation>
</message>
<message>
<source>the line before has no term in {a}, so this must be {b} for them to cancel</source>
<translation>die Zeile davor hat kein Glied mit {a}; damit sie sich aufheben, muss hier {b} stehen</translation>
</message>
<message>
<source>with the other side as it stands, this side is {a}</source>
<translation>wenn die andere Seite so bleibt, lautet diese Seite {a}</translation>
</message>
<message>
<source>with the other terms as they stand, this is {a}</source>
<translation>wenn die anderen Glieder so bleiben, steht hier {a}</translation>
</message>
<message>
<source>the line before has {a}</source>
<translation>in der Zeile davor steht {a}</translation>
</message>
<message>
<source>the line before is {a}</source>
<translation>die Zeile davor lautet {a}</translation>
</message>
<message>
<source>the line before gives {a}</source>
<translation>aus der Zeile davor ergibt sich {a}</translation>
</message>
<message>
<source>there is {a}</source>
<translation>da steht {a}</translation>
</message>
<message>
<source>this is {a}</source>
<translation>hier steht {a}</translation>
</message>
<message>
<source>nothing is left in the line before that gives {a}</source>
<translation>in der Zeile davor bleibt nichts übrig, das {a} ergibt</translation>
</message>
<message>
<source>nothing in the line before gives {a}</source>
<translation>nichts in der Zeile davor ergibt {a}</translation>
</message>
<message>
<source>together they make what the line before has: {sentence}</source>
<translation>zusammen ergeben sie, was in der Zeile davor steht: {sentence}</translation>
</message>
<message>
<source>{a} are not like terms, so they stay apart</source>
<translation>{a} sind nicht gleichartig, also bleiben sie getrennt</translation>
</message>
<message>
<source>adding like terms keeps the letters and their powers: {sentence}</source>
<translation>beim Zusammenfassen bleiben die Variablen mit ihren Hochzahlen, wie sie sind: {sentence}</translation>
</message>
<message>
<source>the right term</source>
<translation>das richtige Glied</translation>
</message>
<message>
<source>a missing term</source>
<translation>ein fehlendes Glied</translation>
</message>
<message>
<source>{a} on the left becomes {b} on the right</source>
<translation>{a} auf der linken Seite wird auf der rechten zu {b}</translation>
</message>
<message>
<source>{a} on the right becomes {b} on the left</source>
<translation>{a} auf der rechten Seite wird auf der linken zu {b}</translation>
</message>
<message>
<source>{a} changes sides, so its sign changes too</source>
<translation>{a} wechselt die Seite, also ändert sich auch das Vorzeichen</translation>
</message>
<message>
<source>the left was not multiplied: {sentence}</source>
<translation>die linke Seite wurde nicht multipliziert: {sentence}</translation>
</message>
<message>
<source>the right was not multiplied: {sentence}</source>
<translation>die rechte Seite wurde nicht multipliziert: {sentence}</translation>
</message>
<message>
<source>{a} was added on the left only; the right needs the same</source>
<translation>{a} wurde nur links addiert; rechts gehört dasselbe hin</translation>
</message>
<message>
<source>{a} was added on the right only; the left needs the same</source>
<translation>{a} wurde nur rechts addiert; links gehört dasselbe hin</translation>
</message>
<message>
<source>{a} was taken on the left only; the right needs the same</source>
<translation>{a} wurde nur links abgezogen; rechts gehört dasselbe hin</translation>
</message>
<message>
<source>{a} was taken on the right only; the left needs the same</source>
<translation>{a} wurde nur rechts abgezogen; links gehört dasselbe hin</translation>
</message>
<message>
<source>{a} was added on the left, so the same is done on the right</source>
<translation>{a} wurde links addiert, also auch rechts</translation>
</message>
<message>
<source>{a} was added on the right, so the same is done on the left</source>
<translation>{a} wurde rechts addiert, also auch links</translation>
</message>
<message>
<source>{a} was taken away on the left, so the same is done on the right</source>
<translation>{a} wurde links abgezogen, also auch rechts</translation>
</message>
<message>
<source>{a} was taken away on the right, so the same is done on the left</source>
<translation>{a} wurde rechts abgezogen, also auch links</translation>
</message>
<message>
<source>the left was squared, so the right is squared too, as a whole</source>
<translation>die linke Seite wurde quadriert, also wird auch die rechte als Ganzes quadriert</translation>
</message>
<message>
<source>the right was squared, so the left is squared too, as a whole</source>
<translation>die rechte Seite wurde quadriert, also wird auch die linke als Ganzes quadriert</translation>
</message>
<message>
<source>the left was cubed, so the right is cubed too, as a whole</source>
<translation>die linke Seite wurde hoch 3 genommen, also auch die rechte als Ganzes</translation>
</message>
<message>
<source>the right was cubed, so the left is cubed too, as a whole</source>
<translation>die rechte Seite wurde hoch 3 genommen, also auch die linke als Ganzes</translation>
</message>
<message>
<source>every term is multiplied: {sentence}</source>
<translation>jedes Glied wird multipliziert: {sentence}</translation>
</message>
<message>
<source>each term in the bracket is multiplied: {sentence}</source>
<translation>jedes Glied in der Klammer wird multipliziert: {sentence}</translation>
</message>
<message>
<source>every term is divided: {sentence}</source>
<translation>jedes Glied wird dividiert: {sentence}</translation>
</message>
<message>
<source>over the bottom {a}, {b} has the top {c}</source>
<translation>über dem Nenner {a} hat {b} den Zähler {c}</translation>
</message>
<message>
<source>{sentence}; likewise {more}</source>
<translation>{sentence}; ebenso: {more}</translation>
</message>
<message>
<source>{sentence}; also {more}</source>
<translation>{sentence}; außerdem: {more}</translation>
</message>
<message>
<source>{a} should be {b}</source>
<translation>statt {a} muss {b} stehen</translation>
</message>
<message>
<source>{a} should be {b} and {sentence}</source>
<translation>statt {a} muss {b} stehen und {sentence}</translation>
</message>
<message>
<source>a missing term should be {a}</source>
<translation>es fehlt {a}</translation>
</message>
<message>
<source>a missing term should be {a}: {sentence}</source>
<translation>es fehlt {a}, denn {sentence}</translation>
</message>
<message>
<source>{what} should be {a}</source>
<translation>{what} muss {a} lauten</translation>
</message>
<message>
<source>{a} should be {b}: {sentence}</source>
<translation>statt {a} muss {b} stehen, denn {sentence}</translation>
</message>
<message>
<source>{what} should be {a}: {sentence}</source>
<translation>{what} muss {a} lauten, denn {sentence}</translation>
</message>
<message>
<source>At character {number}: {what} expected. Edit the line there.</source>
<translation>Bei Zeichen {number} wird erwartet: {what}. Ändern Sie die Zeile dort.</translation>
</message>
<message>
<source>a closing bracket</source>
<translation>eine schließende Klammer</translation>
</message>
<message>
<source>a closing bracket {name}</source>
<translation>eine schließende Klammer „{name}“</translation>
</message>
<message>
<source>a closing brace</source>
<translation>eine schließende geschweifte Klammer</translation>
</message>
<message>
<source>a closing brace }</source>
<translation>eine schließende geschweifte Klammer „}“</translation>
</message>
<message>
<source>a closing bar |</source>
<translation>ein schließender Betragsstrich „|“</translation>
</message>
<message>
<source>a bracket after {name}</source>
<translation>eine Klammer nach „{name}“</translation>
</message>
<message>
<source>braces around the first of two powers</source>
<translation>geschweifte Klammern um die erste von zwei Potenzen</translation>
</message>
<message>
<source>no more than {number} brackets, fractions and powers inside one another</source>
<translation>höchstens {number} ineinander geschachtelte Klammern, Brüche und Potenzen</translation>
</message>
<message>
<source>no more than {number} divisions in one term</source>
<translation>höchstens {number} Divisionen in einem Glied</translation>
</message>
<message>
<source>a number, a letter or a bracket</source>
<translation>eine Zahl, eine Variable oder eine Klammer</translation>
</message>
<message>
<source>a number, a letter or a sign of mathematics</source>
<translation>eine Zahl, ein Buchstabe oder ein mathematisches Zeichen</translation>
</message>
<message>
<source>a number of at most {number} digits</source>
<translation>eine Zahl mit höchstens {number} Ziffern</translation>
</message>
<message>
<source>a line of at most {number} characters</source>
<translation>eine Zeile mit höchstens {number} Zeichen</translation>
</message>
<message>
<source>a number before the recurring digits</source>
<translation>eine Zahl vor der Periode</translation>
</message>
<message>
<source>the digits that recur</source>
<translation>die Ziffern der Periode</translation>
</message>
<message>
<source>the upper number</source>
<translation>die obere Zahl</translation>
</message>
<message>
<source>the lower number</source>
<translation>die untere Zahl</translation>
</message>
<message>
<source>the number chosen</source>
<translation>die Zahl der ausgewählten</translation>
</message>
<message>
<source>the number chosen from</source>
<translation>die Zahl, aus der ausgewählt wird</translation>
</message>
<message>
<source>a letter</source>
<translation>eine Variable</translation>
</message>
<message>
<source>a letter after let</source>
<translation>eine Variable nach let</translation>
</message>
<message>
<source>a subscript</source>
<translation>ein Index</translation>
</message>
<message>
<source>a power</source>
<translation>eine Hochzahl</translation>
</message>
<message>
<source>a power in digits</source>
<translation>eine Hochzahl in Ziffern</translation>
</message>
<message>
<source>an operator</source>
<translation>ein Rechenzeichen</translation>
</message>
<message>
<source>an operator or the end of the line</source>
<translation>ein Rechenzeichen oder das Ende der Zeile</translation>
</message>
<message>
<source>an equals sign</source>
<translation>ein Gleichheitszeichen</translation>
</message>
<message>
<source>an arrow</source>
<translation>ein Pfeil</translation>
</message>
<message>
<source>a command's name after the backslash</source>
<translation>der Name eines Befehls nach dem Schrägstrich</translation>
</message>
<message>
<source>the end of the line</source>
<translation>das Ende der Zeile</translation>
</message>
<message>
<source>an expression alone</source>
<translation>ein Term für sich</translation>
</message>
<message>
<source>an expression or an equation</source>
<translation>ein Term oder eine Gleichung</translation>
</message>
<message>
<source>the top of the fraction</source>
<translation>der Zähler des Bruchs</translation>
</message>
<message>
<source>the bottom of the fraction</source>
<translation>der Nenner des Bruchs</translation>
</message>
<message>
<source>what stands under the root</source>
<translation>was unter der Wurzel steht</translation>
</message>
<message>
<source>the base of the logarithm</source>
<translation>die Basis des Logarithmus</translation>
</message>
<message>
<source>what {name} is taken of</source>
<translation>das, worauf {name} angewandt wird</translation>
</message>
<message>
<source>a set</source>
<translation>eine Menge</translation>
</message>
<message>
<source>an interval, a list in braces or another set</source>
<translation>ein Intervall, eine Liste in geschweiften Klammern oder eine andere Menge</translation>
</message>
<message>
<source>the real numbers or the integers</source>
<translation>die reellen oder die ganzen Zahlen</translation>
</message>
<message>
<source>a list in braces</source>
<translation>eine Liste in geschweiften Klammern</translation>
</message>
<message>
<source>the letter and its first value under {name}</source>
<translation>die Variable und ihr Anfangswert unter {name}</translation>
</message>
<message>
<source>the letter and its first value in braces under {name}</source>
<translation>die Variable und ihr Anfangswert in geschweiften Klammern unter {name}</translation>
</message>
<message>
<source>the last value above {name}</source>
<translation>der Endwert über {name}</translation>
</message>
<message>
<source>the last value</source>
<translation>der Endwert</translation>
</message>
<message>
<source>the letter and where it goes under {name}</source>
<translation>die Variable und wohin sie strebt unter {name}</translation>
</message>
<message>
<source>the letter and where it goes in braces under {name}</source>
<translation>die Variable und wohin sie strebt, in geschweiften Klammern unter {name}</translation>
</message>
<message>
<source>the lower limit</source>
<translation>die untere Grenze</translation>
</message>
<message>
<source>the upper limit</source>
<translation>die obere Grenze</translation>
</message>
<message>
<source>both limits of the integral</source>
<translation>beide Grenzen des Integrals</translation>
</message>
<message>
<source>the end of what is integrated</source>
<translation>das Ende des Integranden</translation>
</message>
<message>
<source>what is integrated and then a differential such as dx</source>
<translation>der Integrand und dann ein Differential wie dx</translation>
</message>
<message>
<source>the end of what is differentiated</source>
<translation>das Ende dessen, was abgeleitet wird</translation>
</message>
<message>
<source>a bound</source>
<translation>eine Grenze</translation>
</message>
<message>
<source>both bounds after the square bracket</source>
<translation>beide Grenzen nach der eckigen Klammer</translation>
</message>
<message>
<source>{a} makes the line before true as well</source>
<translation>{a} erfüllt die Zeile davor ebenfalls</translation>
</message>
<message>
<source>{a} is 0 when {b} is {c}</source>
<translation>{a} ist 0, wenn {b} gleich {c} ist</translation>
</message>
<message>
<source>{a} makes the line before true; {b} does not</source>
<translation>{a} erfüllt die Zeile davor, {b} nicht</translation>
</message>
<message>
<source>{a} times {b} is {c}, but the first term is {d}</source>
<translation>{a} mal {b} ist {c}, aber das erste Glied ist {d}</translation>
</message>
<message>
<source>{a} times {b} is {c}, but the last term is {d}</source>
<translation>{a} mal {b} ist {c}, aber das letzte Glied ist {d}</translation>
</message>
<message>
<source>{a} is {b}, but the middle term is {c}</source>
<translation>{a} ist {b}, aber das mittlere Glied ist {c}</translation>
</message>
<message>
<source>{a} is {b}, but there is no middle term</source>
<translation>{a} ist {b}, aber es gibt kein mittleres Glied</translation>
</message>
<message>
<source>{a} ends in {b}, so {c} is added on the right as well</source>
<translation>{a} endet auf {b}, also wird {c} auch rechts addiert</translation>
</message>
<message>
<source>half of {a} goes into the bracket: {b}</source>
<translation>die Hälfte von {a} kommt in die Klammer: {b}</translation>
</message>
<message>
<source>half of the number before {a} goes into the bracket: {b}</source>
<translation>die Hälfte der Zahl vor {a} kommt in die Klammer: {b}</translation>
</message>
<message>
<source>{a} is {b}, so {c} must be taken away again</source>
<translation>{a} ist {b}, also muss {c} wieder abgezogen werden</translation>
</message>
<message>
<source>{a} ends in {b}, which must be taken away again</source>
<translation>{a} endet auf {b}, und das muss wieder abgezogen werden</translation>
</message>
<message>
<source>the bottom of the formula is 2a, and a is {a}, so it is {b}</source>
<translation>der Nenner der Formel ist 2a, und a ist {a}, also ist er {b}</translation>
</message>
<message>
<source>b is {a}, so minus b is {b}</source>
<translation>b ist {a}, also ist −b gleich {b}</translation>
</message>
<message>
<source>minus b is {a}, and divided by {b} that is {c}</source>
<translation>−b ist {a}, und durch {b} geteilt ist das {c}</translation>
</message>
<message>
<source>the logarithm undoes the power of e: the exponent is {a}</source>
<translation>der Logarithmus hebt die e-Potenz auf: der Exponent ist {a}</translation>
</message>
<message>
<source>the logarithm undoes the power: the exponent is {a}</source>
<translation>der Logarithmus hebt die Potenz auf: der Exponent ist {a}</translation>
</message>
<message>
<source>the power of {a} undoes the logarithm, so this is {b}</source>
<translation>die Potenz zur Basis {a} hebt den Logarithmus auf, also steht hier {b}</translation>
</message>
<message>
<source>the fractions are added first and turned over as a whole, which gives {a}</source>
<translation>erst werden die Brüche addiert, dann wird vom Ganzen der Kehrwert gebildet; das ergibt {a}</translation>
</message>
<message>
<source>what stands between the bars can also be {a}</source>
<translation>was zwischen den Betragsstrichen steht, kann auch {a} sein</translation>
</message>
<message>
<source>{a} is {b}, so {c} is its square root</source>
<translation>{a} ist {b}, also ist {c} die Quadratwurzel daraus</translation>
</message>
<message>
<source>{a} is {b}, so {c} is its cube root</source>
<translation>{a} ist {b}, also ist {c} die dritte Wurzel daraus</translation>
</message>
<message>
<source>{a} is {b}, so {c} is its fourth root</source>
<translation>{a} ist {b}, also ist {c} die vierte Wurzel daraus</translation>
</message>
<message>
<source>this is {a}: the square root is still to be taken</source>
<translation>hier steht {a}: die Quadratwurzel ist noch zu ziehen</translation>
</message>
<message>
<source>this is {a}: the cube root is still to be taken</source>
<translation>hier steht {a}: die dritte Wurzel ist noch zu ziehen</translation>
</message>
<message>
<source>this is {a}: the fourth root is still to be taken</source>
<translation>hier steht {a}: die vierte Wurzel ist noch zu ziehen</translation>
</message>
<message>
<source>a square is never negative, so no real number makes {a} true</source>
<translation>ein Quadrat ist nie negativ, also erfüllt keine reelle Zahl {a}</translation>
</message>
<message>
<source>a square below a number lies between its two roots, {a}</source>
<translation>ist ein Quadrat kleiner als eine Zahl, so liegt die Variable zwischen deren Wurzeln {a}</translation>
</message>
<message>
<source>a square above a number lies outside its two roots, {a}</source>
<translation>ist ein Quadrat größer als eine Zahl, so liegt die Variable außerhalb von deren Wurzeln {a}</translation>
</message>
<message>
<source>the root of a square is never negative, so it is the absolute value</source>
<translation>die Wurzel aus einem Quadrat ist nie negativ, also ist sie der Betrag</translation>
</message>
<message>
<source>multiplying or dividing by a negative number turns the sign round, and nothing else does</source>
<translation>das Ungleichheitszeichen dreht sich um, wenn man mit einer negativen Zahl multipliziert oder durch sie dividiert, und nur dann</translation>
</message>
<message>
<source>no side was multiplied or divided, so the sign stays as it is</source>
<translation>keine Seite wurde multipliziert oder dividiert, also bleibt das Zeichen, wie es ist</translation>
</message>
<message>
<source>both sides changed their sign, which turns the sign of the inequality round</source>
<translation>beide Seiten haben das Vorzeichen gewechselt, und das dreht das Ungleichheitszeichen um</translation>
</message>
<message>
<source>both sides were divided by {a}, a negative number, which turns the sign round</source>
<translation>beide Seiten wurden durch {a} dividiert, eine negative Zahl, und das dreht das Zeichen um</translation>
</message>
<message>
<source>both sides were multiplied by {a}, a negative number, which turns the sign round</source>
<translation>beide Seiten wurden mit {a} multipliziert, einer negativen Zahl, und das dreht das Zeichen um</translation>
</message>
<message>
<source>both sides were divided by {a}, a positive number, so the sign stays as it is</source>
<translation>beide Seiten wurden durch {a} dividiert, eine positive Zahl, also bleibt das Zeichen, wie es ist</translation>
</message>
<message>
<source>both sides were multiplied by {a}, a positive number, so the sign stays as it is</source>
<translation>beide Seiten wurden mit {a} multipliziert, einer positiven Zahl, also bleibt das Zeichen, wie es ist</translation>
</message>
<message>
<source>with {a} in place of {b}, {sentence}</source>
<translation>mit {a} statt {b}: {sentence}</translation>
</message>
<message>
<source>the first equation plus the second: {sentence}</source>
<translation>erste Gleichung plus zweite: {sentence}</translation>
</message>
<message>
<source>the first equation minus the second: {sentence}</source>
<translation>erste Gleichung minus zweite: {sentence}</translation>
</message>
<message>
<source>the first equation plus {number} times the second: {sentence}</source>
<translation>erste Gleichung plus {number}-mal die zweite: {sentence}</translation>
</message>
<message>
<source>the first equation minus {number} times the second: {sentence}</source>
<translation>erste Gleichung minus {number}-mal die zweite: {sentence}</translation>
</message>
<message>
<source>{number} times the first equation plus the second: {sentence}</source>
<translation>{number}-mal die erste Gleichung plus die zweite: {sentence}</translation>
</message>
<message>
<source>{number} times the first equation minus the second: {sentence}</source>
<translation>{number}-mal die erste Gleichung minus die zweite: {sentence}</translation>
</message>
<message>
<source>{number} times the first equation plus {count} times the second: {sentence}</source>
<translation>{number}-mal die erste Gleichung plus {count}-mal die zweite: {sentence}</translation>
</message>
<message>
<source>{number} times the first equation minus {count} times the second: {sentence}</source>
<translation>{number}-mal die erste Gleichung minus {count}-mal die zweite: {sentence}</translation>
</message>
<message>
<source>the second equation minus the first: {sentence}</source>
<translation>zweite Gleichung minus erste: {sentence}</translation>
</message>
<message>
<source>the second equation minus {number} times the first: {sentence}</source>
<translation>zweite Gleichung minus {number}-mal die erste: {sentence}</translation>
</message>
<message>
<source>{number} times the second equation minus the first: {sentence}</source>
<translation>{number}-mal die zweite Gleichung minus die erste: {sentence}</translation>
</message>
<message>
<source>{number} times the second equation minus {count} times the first: {sentence}</source>
<translation>{number}-mal die zweite Gleichung minus {count}-mal die erste: {sentence}</translation>
</message>
<message>
<source>each term in the bracket is multiplied by what stands before it</source>
<translation>jedes Glied in der Klammer wird mit dem multipliziert, was davor steht</translation>
</message>
<message>
<source>a minus before a bracket turns the sign of each term in it</source>
<translation>ein Minus vor der Klammer kehrt das Vorzeichen jedes Glieds darin um</translation>
</message>
<message>
<source>the sign of a product comes from the signs of both factors</source>
<translation>das Vorzeichen eines Produkts ergibt sich aus den Vorzeichen beider Faktoren</translation>
</message>
<message>
<source>the negative factor multiplies every term in the bracket</source>
<translation>der negative Faktor multipliziert jedes Glied in der Klammer</translation>
</message>
<message>
<source>the minus belongs to the factor and multiplies every term in the bracket</source>
<translation>das Minus gehört zum Faktor und wirkt auf jedes Glied in der Klammer</translation>
</message>
<message>
<source>multiplication comes before subtraction, so the factor stays with its bracket</source>
<translation>Punkt vor Strich: der Faktor bleibt bei seiner Klammer</translation>
</message>
<message>
<source>the square of a sum has a middle term, twice the product</source>
<translation>das Quadrat einer Summe hat ein Mittelglied, das doppelte Produkt</translation>
</message>
<message>
<source>the square of a difference has a middle term and ends in a plus</source>
<translation>das Quadrat einer Differenz hat ein Mittelglied, und das letzte Glied hat ein Plus</translation>
</message>
<message>
<source>the square of a negative term is positive</source>
<translation>das Quadrat eines negativen Glieds ist positiv</translation>
</message>
<message>
<source>the product of the two terms comes twice</source>
<translation>das Produkt der beiden Glieder kommt zweimal vor</translation>
</message>
<message>
<source>the number before the letter is squared too</source>
<translation>die Zahl vor der Variablen wird mitquadriert</translation>
</message>
<message>
<source>each term of one bracket multiplies each of the other</source>
<translation>jedes Glied der einen Klammer wird mit jedem der anderen multipliziert</translation>
</message>
<message>
<source>the two middle products are collected with their signs</source>
<translation>die beiden mittleren Produkte werden mit ihren Vorzeichen zusammengefasst</translation>
</message>
<message>
<source>every term in the bracket is multiplied, the last one too</source>
<translation>jedes Glied in der Klammer wird multipliziert, auch das letzte</translation>
</message>
<message>
<source>a letter times itself is its square</source>
<translation>eine Variable mal sich selbst ist ihr Quadrat</translation>
</message>
<message>
<source>a power does not spread over a sum</source>
<translation>eine Potenz verteilt sich nicht auf die Glieder einer Summe</translation>
</message>
<message>
<source>the two numbers multiply to the last term and add to the middle one, signs counted</source>
<translation>das Produkt der beiden Zahlen ist das letzte Glied, ihre Summe das mittlere, jeweils mit Vorzeichen</translation>
</message>
<message>
<source>the two numbers must multiply to the last term as well as add to the middle one</source>
<translation>nicht nur die Summe der beiden Zahlen muss das mittlere Glied ergeben, sondern auch ihr Produkt das letzte</translation>
</message>
<message>
<source>the two numbers must add to the middle term as well as multiply to the last one</source>
<translation>nicht nur das Produkt der beiden Zahlen muss das letzte Glied ergeben, sondern auch ihre Summe das mittlere</translation>
</message>
<message>
<source>a term divided by itself leaves 1</source>
<translation>ein Glied durch sich selbst geteilt lässt 1 übrig</translation>
</message>
<message>
<source>every term leaves something when the factor is taken out; a term divided by itself leaves 1</source>
<translation>beim Ausklammern lässt jedes Glied etwas übrig; ein Glied durch sich selbst geteilt lässt 1 übrig</translation>
</message>
<message>
<source>the common factor is taken out of every term</source>
<translation>der gemeinsame Faktor wird aus jedem Glied ausgeklammert</translation>
</message>
<message>
<source>taking out a negative factor turns the sign of every term left inside</source>
<translation>wer einen negativen Faktor ausklammert, kehrt das Vorzeichen jedes Glieds in der Klammer um</translation>
</message>
<message>
<source>a sum of two squares has no real factors</source>
<translation>eine Summe zweier Quadrate lässt sich im Reellen nicht zerlegen</translation>
</message>
<message>
<source>the factors of a difference of two squares hold the square roots</source>
<translation>in den Faktoren einer Differenz zweier Quadrate stehen deren Wurzeln</translation>
</message>
<message>
<source>the square root is taken of the number before the letter too</source>
<translation>die Wurzel wird auch aus der Zahl vor der Variablen gezogen</translation>
</message>
<message>
<source>only terms with the same letters and powers are collected</source>
<translation>nur Glieder mit denselben Variablen und Hochzahlen werden zusammengefasst</translation>
</message>
<message>
<source>terms in different letters are not collected</source>
<translation>Glieder mit verschiedenen Variablen werden nicht zusammengefasst</translation>
</message>
<message>
<source>terms in different powers are not collected</source>
<translation>Glieder mit verschiedenen Hochzahlen werden nicht zusammengefasst</translation>
</message>
<message>
<source>adding like terms keeps the power</source>
<translation>beim Zusammenfassen bleibt die Hochzahl gleich</translation>
</message>
<message>
<source>a letter alone stands for once that letter</source>
<translation>eine Variable allein steht für einmal diese Variable</translation>
</message>
<message>
<source>a letter alone counts once</source>
<translation>eine Variable allein zählt einmal</translation>
</message>
<message>
<source>a sign belongs to the term that follows it</source>
<translation>ein Vorzeichen gehört zu dem Glied, vor dem es steht</translation>
</message>
<message>
<source>two negative terms add up to a larger negative term</source>
<translation>zwei negative Glieder ergeben zusammen ein negatives Glied von größerem Betrag</translation>
</message>
<message>
<source>the minus belongs to the one term after it</source>
<translation>das Minus gehört nur zu dem einen Glied dahinter</translation>
</message>
<message>
<source>two negatives make a plus in a product, not in a sum</source>
<translation>Minus und Minus ergibt Plus im Produkt, nicht in der Summe</translation>
</message>
<message>
<source>the sum of two logarithms is the logarithm of the product, the difference that of the quotient</source>
<translation>die Summe zweier Logarithmen ist der Logarithmus des Produkts, die Differenz der des Quotienten</translation>
</message>
<message>
<source>a number before a logarithm belongs to that logarithm only, as a power of what is in it</source>
<translation>eine Zahl vor einem Logarithmus gehört nur zu diesem Logarithmus, als Hochzahl dessen, was darin steht</translation>
</message>
<message>
<source>the power comes before the product, so the factor stays outside or goes in as its root</source>
<translation>die Potenz kommt vor dem Produkt, also bleibt der Faktor draußen oder kommt als seine Wurzel hinein</translation>
</message>
<message>
<source>multiplication comes before addition and subtraction</source>
<translation>Punkt vor Strich</translation>
</message>
<message>
<source>powers are collected like any other term: the base is not added</source>
<translation>Potenzen werden zusammengefasst wie andere Glieder: die Basen werden nicht addiert</translation>
</message>
<message>
<source>every term of the top is divided by the bottom, not only the one with the factor</source>
<translation>jedes Glied des Zählers wird durch den Nenner geteilt, nicht nur das mit dem Faktor</translation>
</message>
<message>
<source>the top is the sum times the difference, so the bracket that is not below stays</source>
<translation>der Zähler ist Summe mal Differenz, also bleibt die Klammer, die nicht im Nenner steht</translation>
</message>
<message>
<source>a power with a fraction is a root, not a product with the fraction</source>
<translation>ein Bruch als Hochzahl bedeutet eine Wurzel, nicht ein Produkt mit dem Bruch</translation>
</message>
<message>
<source>a negative power is a reciprocal, not a negative number</source>
<translation>eine negative Hochzahl bedeutet den Kehrwert, keine negative Zahl</translation>
</message>
<message>
<source>the squares of sine and cosine add up to 1, so what is left is a square</source>
<translation>die Quadrate von Sinus und Kosinus ergeben zusammen 1, also bleibt ein Quadrat übrig</translation>
</message>
<message>
<source>a root times itself is the number under it</source>
<translation>eine Wurzel mal sich selbst ist die Zahl darunter</translation>
</message>
<message>
<source>only a factor of the whole top cancels, not one of its terms</source>
<translation>kürzen lässt sich nur ein Faktor des ganzen Zählers, nicht eines seiner Glieder</translation>
</message>
<message>
<source>only factors cancel, not terms</source>
<translation>gekürzt werden Faktoren, keine Summanden</translation>
</message>
<message>
<source>every term of the top is divided</source>
<translation>jedes Glied des Zählers wird geteilt</translation>
</message>
<message>
<source>fractions are added over a common bottom; the bottoms are not added</source>
<translation>Brüche werden über einem gemeinsamen Nenner addiert; die Nenner werden nicht addiert</translation>
</message>
<message>
<source>when the bottom is multiplied, the top is multiplied too</source>
<translation>beim Erweitern wird mit dem Nenner auch der Zähler multipliziert</translation>
</message>
<message>
<source>a fraction can be split along its top only</source>
<translation>ein Bruch lässt sich nur im Zähler aufteilen</translation>
</message>
<message>
<source>the bar works as a bracket: the minus turns every term of the top</source>
<translation>der Bruchstrich wirkt wie eine Klammer: das Minus gilt für jedes Glied des Zählers</translation>
</message>
<message>
<source>dividing by a fraction is multiplying by it turned over</source>
<translation>durch einen Bruch teilen heißt mit seinem Kehrwert multiplizieren</translation>
</message>
<message>
<source>the fraction that one divides by is turned over, not the first</source>
<translation>der Kehrwert wird von dem Bruch gebildet, durch den geteilt wird, nicht vom ersten</translation>
</message>
<message>
<source>a whole number multiplies the top only</source>
<translation>eine ganze Zahl multipliziert nur den Zähler</translation>
</message>
<message>
<source>one over a sum is not the sum of the single reciprocals</source>
<translation>der Kehrwert einer Summe ist nicht die Summe der Kehrwerte</translation>
</message>
<message>
<source>a difference divided by its opposite is -1</source>
<translation>eine Differenz geteilt durch ihre Gegenzahl ist -1</translation>
</message>
<message>
<source>the square of a negative number is positive</source>
<translation>das Quadrat einer negativen Zahl ist positiv</translation>
</message>
<message>
<source>numbers side by side after a substitution are multiplied</source>
<translation>nach dem Einsetzen werden nebeneinanderstehende Zahlen multipliziert</translation>
</message>
<message>
<source>multiplication comes before addition</source>
<translation>Punkt vor Strich: erst multiplizieren, dann addieren</translation>
</message>
<message>
<source>the second number is taken from the first, so the sign counts</source>
<translation>die zweite Zahl wird von der ersten abgezogen, also zählt das Vorzeichen</translation>
</message>
<message>
<source>the sign of a quotient comes from the signs of both numbers</source>
<translation>das Vorzeichen eines Quotienten ergibt sich aus den Vorzeichen beider Zahlen</translation>
</message>
<message>
<source>powers of one base are added when they are multiplied</source>
<translation>beim Multiplizieren von Potenzen mit gleicher Basis werden die Hochzahlen addiert</translation>
</message>
<message>
<source>a power of a power multiplies</source>
<translation>beim Potenzieren einer Potenz werden die Hochzahlen multipliziert</translation>
</message>
<message>
<source>the power belongs to the number in the bracket too</source>
<translation>die Hochzahl gilt auch für die Zahl in der Klammer</translation>
</message>
<message>
<source>a power of a number is repeated multiplication, not number times power</source>
<translation>eine Potenz ist die Zahl mehrmals mit sich selbst multipliziert, nicht Zahl mal Hochzahl</translation>
</message>
<message>
<source>the power belongs to the letter only</source>
<translation>die Hochzahl gehört nur zur Variablen</translation>
</message>
<message>
<source>anything but 0 to the power 0 is 1</source>
<translation>jede Zahl außer 0 ergibt hoch 0 den Wert 1</translation>
</message>
<message>
<source>the power comes before the minus</source>
<translation>die Potenz kommt vor dem Minus</translation>
</message>
<message>
<source>powers of one base are subtracted when they are divided</source>
<translation>beim Dividieren von Potenzen mit gleicher Basis werden die Hochzahlen subtrahiert</translation>
</message>
<message>
<source>the base stays as it is while the powers are added</source>
<translation>die Basis bleibt gleich, während die Hochzahlen addiert werden</translation>
</message>
<message>
<source>a power of one half is a square root</source>
<translation>die Hochzahl ein Halb bedeutet die Quadratwurzel</translation>
</message>
<message>
<source>powers are added when multiplying, not when adding</source>
<translation>Hochzahlen werden beim Multiplizieren addiert, nicht beim Addieren</translation>
</message>
<message>
<source>a root does not spread over a sum</source>
<translation>eine Wurzel verteilt sich nicht auf die Glieder einer Summe</translation>
</message>
<message>
<source>roots are joined by multiplying, not by adding</source>
<translation>Wurzeln werden beim Multiplizieren zusammengezogen, nicht beim Addieren</translation>
</message>
<message>
<source>a square factor comes out of the root as its square root</source>
<translation>ein quadratischer Faktor kommt als seine Wurzel vor das Wurzelzeichen</translation>
</message>
<message>
<source>the number before the root is squared too</source>
<translation>die Zahl vor der Wurzel wird mitquadriert</translation>
</message>
<message>
<source>a root times its negative is negative</source>
<translation>eine Wurzel mal ihre Gegenzahl ist negativ</translation>
</message>
<message>
<source>the logarithm of a sum does not split; that of a product does</source>
<translation>der Logarithmus einer Summe lässt sich nicht aufteilen, der eines Produkts schon</translation>
</message>
<message>
<source>the logarithm of a product is the sum of the logarithms</source>
<translation>der Logarithmus eines Produkts ist die Summe der Logarithmen</translation>
</message>
<message>
<source>the logarithm of a quotient is the difference of the logarithms</source>
<translation>der Logarithmus eines Quotienten ist die Differenz der Logarithmen</translation>
</message>
<message>
<source>only a power inside the logarithm comes down as a factor</source>
<translation>nur eine Hochzahl im Logarithmus darf als Faktor davor</translation>
</message>
<message>
<source>the name of a function is no factor and does not cancel</source>
<translation>der Name einer Funktion ist kein Faktor und lässt sich nicht kürzen</translation>
</message>
<message>
<source>a factor inside a logarithm becomes a term, not a factor</source>
<translation>aus einem Faktor im Logarithmus wird ein Summand, kein Faktor</translation>
</message>
<message>
<source>a number inside a function does not come out as a factor</source>
<translation>eine Zahl in einer Funktion darf nicht als Faktor davorgezogen werden</translation>
</message>
<message>
<source>the function does not spread over a sum</source>
<translation>die Funktion verteilt sich nicht auf die Glieder einer Summe</translation>
</message>
<message>
<source>the bars do not spread over a sum</source>
<translation>die Betragsstriche verteilen sich nicht auf die Glieder einer Summe</translation>
</message>
<message>
<source>a term that changes sides changes its sign</source>
<translation>ein Glied, das die Seite wechselt, ändert sein Vorzeichen</translation>
</message>
<message>
<source>what is added on one side is added on the other</source>
<translation>was auf der einen Seite addiert wird, wird auch auf der anderen addiert</translation>
</message>
<message>
<source>an addition is undone by subtracting on both sides</source>
<translation>eine Addition macht man rückgängig, indem man auf beiden Seiten subtrahiert</translation>
</message>
<message>
<source>a number times a letter is undone by dividing</source>
<translation>Zahl mal Variable macht man durch Dividieren rückgängig</translation>
</message>
<message>
<source>the other side is divided by the number before the letter, not the other way round</source>
<translation>die andere Seite wird durch die Zahl vor der Variablen geteilt, nicht umgekehrt</translation>
</message>
<message>
<source>dividing by a negative number turns the sign</source>
<translation>beim Dividieren durch eine negative Zahl wechselt das Vorzeichen</translation>
</message>
<message>
<source>both sides change their sign</source>
<translation>beide Seiten wechseln das Vorzeichen</translation>
</message>
<message>
<source>every term of both sides is divided</source>
<translation>jedes Glied auf beiden Seiten wird dividiert</translation>
</message>
<message>
<source>every term of both sides is multiplied</source>
<translation>jedes Glied auf beiden Seiten wird multipliziert</translation>
</message>
<message>
<source>a division is undone by multiplying</source>
<translation>eine Division macht man durch Multiplizieren rückgängig</translation>
</message>
<message>
<source>the letter stays with its number</source>
<translation>die Variable bleibt bei ihrer Zahl</translation>
</message>
<message>
<source>what is done to one side is done to the other</source>
<translation>was man mit der einen Seite macht, macht man auch mit der anderen</translation>
</message>
<message>
<source>the number before the letter is divided by, not subtracted</source>
<translation>durch die Zahl vor der Variablen wird geteilt, sie wird nicht abgezogen</translation>
</message>
<message>
<source>the factor before the bracket is divided by, not subtracted</source>
<translation>durch den Faktor vor der Klammer wird geteilt, er wird nicht abgezogen</translation>
</message>
<message>
<source>a square has a positive and a negative root</source>
<translation>zu einem Quadrat gibt es eine positive und eine negative Lösung</translation>
</message>
<message>
<source>dividing by the letter loses the root 0</source>
<translation>beim Dividieren durch die Variable geht die Lösung 0 verloren</translation>
</message>
<message>
<source>each factor is set to zero, which turns the sign of its number</source>
<translation>jeder Faktor wird gleich null gesetzt, und das kehrt das Vorzeichen seiner Zahl um</translation>
</message>
<message>
<source>only a product that is zero splits into its factors</source>
<translation>nur bei einem Produkt, das null ist, darf man die Faktoren einzeln betrachten</translation>
</message>
<message>
<source>a square is undone by its root, not by halving</source>
<translation>ein Quadrat macht man durch Wurzelziehen rückgängig, nicht durch Halbieren</translation>
</message>
<message>
<source>the formula starts with minus b</source>
<translation>die Lösungsformel beginnt mit −b</translation>
</message>
<message>
<source>under the root stands b squared minus 4ac, with the signs of a and c</source>
<translation>unter der Wurzel steht b² − 4ac, mit den Vorzeichen von a und c</translation>
</message>
<message>
<source>the whole top of the formula is divided by 2a</source>
<translation>der ganze Zähler der Formel wird durch 2a geteilt</translation>
</message>
<message>
<source>the number that completes the square is added on both sides</source>
<translation>die quadratische Ergänzung wird auf beiden Seiten addiert</translation>
</message>
<message>
<source>a sum of fractions is added first and turned over as a whole</source>
<translation>eine Summe von Brüchen wird erst addiert, dann wird vom Ganzen der Kehrwert gebildet</translation>
</message>
<message>
<source>a side is squared as a whole, not term by term</source>
<translation>eine Seite wird als Ganzes quadriert, nicht Glied für Glied</translation>
</message>
<message>
<source>dividing by a negative number turns the sign round</source>
<translation>beim Dividieren durch eine negative Zahl dreht sich das Ungleichheitszeichen um</translation>
</message>
<message>
<source>the sign turns only when multiplying or dividing by a negative number</source>
<translation>das Ungleichheitszeichen dreht sich nur beim Multiplizieren mit einer negativen Zahl oder Dividieren durch sie um</translation>
</message>
<message>
<source>changing the sign of both sides turns the sign round</source>
<translation>wenn beide Seiten das Vorzeichen wechseln, dreht sich das Ungleichheitszeichen um</translation>
</message>
<message>
<source>a square below a number lies between its two roots</source>
<translation>ist ein Quadrat kleiner als eine Zahl, so liegt die Variable zwischen deren beiden Wurzeln</translation>
</message>
<message>
<source>the letter may be negative, which would turn the sign</source>
<translation>die Variable kann negativ sein, dann würde sich das Ungleichheitszeichen umdrehen</translation>
</message>
<message>
<source>a number and its opposite have the same absolute value</source>
<translation>eine Zahl und ihre Gegenzahl haben denselben Betrag</translation>
</message>
<message>
<source>a number changed between the lines</source>
<translation>zwischen den Zeilen hat sich eine Zahl geändert</translation>
</message>
<message>
<source>a sign changed between the lines</source>
<translation>zwischen den Zeilen hat sich ein Vorzeichen geändert</translation>
</message>
<message>
<source>a power changed between the lines</source>
<translation>zwischen den Zeilen hat sich eine Hochzahl geändert</translation>
</message>
<message>
<source>At {point} the line before is {a} and this line is {b}.</source>
<translation>Für {point} ergibt die Zeile davor {a} und diese Zeile {b}.</translation>
</message>
<message>
<source>At {point} {a} is {b} and this line is {c}.</source>
<translation>Für {point} ist {a} gleich {b}, diese Zeile aber {c}.</translation>
</message>
<message>
<source>At {a} the two lines have different values.</source>
<translation>Für {a} haben die beiden Zeilen verschiedene Werte.</translation>
</message>
<message>
<source>At {a} the two lines differ by {b}.</source>
<translation>Für {a} unterscheiden sich die beiden Zeilen um {b}.</translation>
</message>
<message>
<source>the two lines have different values</source>
<translation>die beiden Zeilen haben verschiedene Werte</translation>
</message>
<message>
<source>the two lines differ by {a}</source>
<translation>die beiden Zeilen unterscheiden sich um {a}</translation>
</message>
<message>
<source>At {a} they differ.</source>
<translation>Für {a} unterscheiden sie sich.</translation>
</message>
<message>
<source>They differ.</source>
<translation>Sie unterscheiden sich.</translation>
</message>
<message>
<source>The line before is {a}, this line is {b}.</source>
<translation>Die Zeile davor ergibt {a}, diese Zeile {b}.</translation>
</message>
<message>
<source>{a} is {b}, this line is {c}</source>
<translation>{a} ist {b}, diese Zeile ist {c}</translation>
</message>
<message>
<source>The two numbers are different.</source>
<translation>Die beiden Zahlen sind verschieden.</translation>
</message>
<message>
<source>The numbers agree.</source>
<translation>Die Zahlen stimmen überein.</translation>
</message>
<message>
<source>The numbers on both sides agree.</source>
<translation>Die Zahlen auf beiden Seiten stimmen überein.</translation>
</message>
<message>
<source>Neither line holds: there is no solution.</source>
<translation>Keine der beiden Zeilen stimmt: es gibt keine Lösung.</translation>
</message>
<message>
<source>The two sides are different numbers: {a}.</source>
<translation>Die beiden Seiten sind verschiedene Zahlen: {a}.</translation>
</message>
<message>
<source>The two sides are different numbers: one side has no value.</source>
<translation>Die beiden Seiten sind nicht gleich: eine Seite hat keinen Wert.</translation>
</message>
<message>
<source>The two sides are different numbers: they do not agree.</source>
<translation>Die beiden Seiten sind verschiedene Zahlen: sie stimmen nicht überein.</translation>
</message>
<message>
<source>Taken for every real value; for {a} not negative it holds, if that is given.</source>
<translation>Geprüft für alle reellen Werte; für nicht negative Werte von {a} stimmt es, falls das gegeben ist.</translation>
</message>
<message>
<source>For {a}.</source>
<translation>Für {a}.</translation>
</message>
<message>
<source>Shown by {what}.</source>
<translation>Gezeigt durch {what}.</translation>
</message>
<message>
<source>exact algebra</source>
<translation>exakte Rechnung</translation>
</message>
<message>
<source>written alike</source>
<translation>gleiche Schreibweise</translation>
</message>
<message>
<source>equal derivatives</source>
<translation>gleiche Ableitungen</translation>
</message>
<message>
<source>values to 35 digits</source>
<translation>Werte auf 35 Stellen</translation>
</message>
<message>
<source>sampling at {number} points of every sign pattern, to 35 digits</source>
<translation>Stichproben an {number} Stellen mit allen Vorzeichen, auf 35 Stellen genau</translation>
</message>
<message>
<source>Near enough.</source>
<translation>Genau genug.</translation>
</message>
<message>
<source>An approximation in letters is not judged.</source>
<translation>Eine Näherung mit Variablen wird nicht beurteilt.</translation>
</message>
<message>
<source>It could not be told whether both values are the same.</source>
<translation>Ob beide Werte gleich sind, ließ sich nicht feststellen.</translation>
</message>
<message>
<source>By what is given.</source>
<translation>Nach dem, was gegeben ist.</translation>
</message>
<message>
<source>Under the condition given, as sampled at {number} points.</source>
<translation>Unter der gegebenen Bedingung, nach Stichproben an {number} Stellen.</translation>
</message>
<message>
<source>Too few points satisfy what is given.</source>
<translation>Zu wenige Stellen erfüllen das Gegebene.</translation>
</message>
<message>
<source>What is given about the letters seems to have been used; it could not be followed.</source>
<translation>Offenbar wurde benutzt, was über die Variablen gegeben ist; das ließ sich nicht nachvollziehen.</translation>
</message>
<message>
<source>A value seems to have been put in; it is not known which.</source>
<translation>Offenbar wurde ein Wert eingesetzt; welcher, ist nicht bekannt.</translation>
</message>
<message>
<source>A value put in; it is taken as given.</source>
<translation>Ein Wert wurde eingesetzt; er wird als gegeben genommen.</translation>
</message>
<message>
<source>With the known value put in.</source>
<translation>Der bekannte Wert wurde eingesetzt.</translation>
</message>
<message>
<source>With {a} put in.</source>
<translation>Eingesetzt: {a}.</translation>
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
<source>{a} satisfy the line before but not this line.</source>
<translation>{a} erfüllen die Zeile davor, aber nicht diese Zeile.</translation>
</message>
<message>
<source>{a} satisfy this line but not the line before.</source>
<translation>{a} erfüllen diese Zeile, aber nicht die Zeile davor.</translation>
</message>
<message>
<source>{a} satisfies this line but not the line before: check it and reject it.</source>
<translation>{a} erfüllt diese Zeile, aber nicht die Zeile davor: Probe machen und verwerfen.</translation>
</message>
<message>
<source>{a} satisfy this line but not the line before: check it and reject it.</source>
<translation>{a} erfüllen diese Zeile, aber nicht die Zeile davor: Probe machen und verwerfen.</translation>
</message>
<message>
<source>{a} satisfies this line but not the line before: solutions are gained.</source>
<translation>{a} erfüllt diese Zeile, aber nicht die Zeile davor: es kommen Lösungen hinzu.</translation>
</message>
<message>
<source>{a} satisfy this line but not the line before: solutions are gained.</source>
<translation>{a} erfüllen diese Zeile, aber nicht die Zeile davor: es kommen Lösungen hinzu.</translation>
</message>
<message>
<source>{a} satisfies the line before but not this line, and {b} satisfies this line but not the line before.</source>
<translation>{a} erfüllt die Zeile davor, aber nicht diese Zeile, und {b} erfüllt diese Zeile, aber nicht die Zeile davor.</translation>
</message>
<message>
<source>{a} satisfy the line before but not this line, and {b} satisfy this line but not the line before.</source>
<translation>{a} erfüllen die Zeile davor, aber nicht diese Zeile, und {b} erfüllen diese Zeile, aber nicht die Zeile davor.</translation>
</message>
<message>
<source>{a} satisfies the line before but not this line, and {b} this line only.</source>
<translation>{a} erfüllt die Zeile davor, aber nicht diese Zeile, und {b} nur diese Zeile.</translation>
</message>
<message>
<source>The boundary is another: {a} satisfies the line before but not this line.</source>
<translation>Die Grenze ist eine andere: {a} erfüllt die Zeile davor, aber nicht diese Zeile.</translation>
</message>
<message>
<source>The boundary is another: {a} satisfies this line but not the line before.</source>
<translation>Die Grenze ist eine andere: {a} erfüllt diese Zeile, aber nicht die Zeile davor.</translation>
</message>
<message>
<source>{a} does not satisfy the line before.</source>
<translation>{a} erfüllt die Zeile davor nicht.</translation>
</message>
<message>
<source>The solution {a} is lost.</source>
<translation>Die Lösung {a} geht verloren.</translation>
</message>
<message>
<source>A solution is lost: {a}.</source>
<translation>Eine Lösung geht verloren: {a}.</translation>
</message>
<message>
<source>Solutions are lost: {a}.</source>
<translation>Es gehen Lösungen verloren: {a}.</translation>
</message>
<message>
<source>Solutions are lost: {sentence}</source>
<translation>Es gehen Lösungen verloren: {sentence}</translation>
</message>
<message>
<source>Not all solutions are given.</source>
<translation>Es sind nicht alle Lösungen angegeben.</translation>
</message>
<message>
<source>Not all solutions are there: {a} is missing.</source>
<translation>Es sind nicht alle Lösungen da: es fehlt {a}.</translation>
</message>
<message>
<source>No value satisfies this line.</source>
<translation>Kein Wert erfüllt diese Zeile.</translation>
</message>
<message>
<source>No value satisfies the line before, but {a} satisfies this line.</source>
<translation>Kein Wert erfüllt die Zeile davor, aber {a} erfüllt diese Zeile.</translation>
</message>
<message>
<source>No value satisfies the line before, but {a} satisfy this line.</source>
<translation>Kein Wert erfüllt die Zeile davor, aber {a} erfüllen diese Zeile.</translation>
</message>
<message>
<source>Both sides were multiplied by {a} or the like, whose sign is not known.</source>
<translation>Beide Seiten wurden mit {a} oder Ähnlichem multipliziert; das Vorzeichen davon ist nicht bekannt.</translation>
</message>
<message>
<source>With {a} the equations before hold, but this line does not.</source>
<translation>Mit {a} stimmen die Gleichungen davor, aber diese Zeile nicht.</translation>
</message>
<message>
<source>The solution {a} is not among those given.</source>
<translation>Die Lösung {a} ist nicht unter den angegebenen.</translation>
</message>
<message>
<source>Complex numbers are compared only as the two sides of one line.</source>
<translation>Komplexe Zahlen werden nur als die beiden Seiten einer Zeile verglichen.</translation>
</message>
<message>
<source>No values were found that satisfy the line before, so nothing could be compared.</source>
<translation>Es fanden sich keine Werte, die die Zeile davor erfüllen, also war nichts zu vergleichen.</translation>
</message>
<message>
<source>It has too many solutions to compare; say the interval that is meant.</source>
<translation>Es gibt zu viele Lösungen zum Vergleichen; geben Sie das gemeinte Intervall an.</translation>
</message>
<message>
<source>With the branches on the lines before it, all solutions are there.</source>
<translation>Mit den Fällen auf den Zeilen davor sind alle Lösungen da.</translation>
</message>
<message>
<source>One branch; the solutions are all there with line {number}.</source>
<translation>Ein Fall von mehreren; mit Zeile {number} sind alle Lösungen da.</translation>
</message>
<message>
<source>Read as alternatives, joined by or.</source>
<translation>Als Fälle gelesen, durch „oder“ verbunden.</translation>
</message>
<message>
<source>An inequality with ± has no agreed meaning; write each part out.</source>
<translation>Eine Ungleichung mit ± hat keine feste Bedeutung; schreiben Sie jeden Teil aus.</translation>
</message>
<message>
<source>A line that starts with an inequality sign is not judged from one line.</source>
<translation>Eine Zeile, die mit einem Ungleichheitszeichen beginnt, wird nicht aus einer einzelnen Zeile beurteilt.</translation>
</message>
<message>
<source>One case of the modulus: what it gives is to be checked in the line before.</source>
<translation>Ein Fall des Betrags: was er ergibt, ist in der Zeile davor zu prüfen.</translation>
</message>
<message>
<source>The boundary of the inequality.</source>
<translation>Die Grenze der Ungleichung.</translation>
</message>
<message>
<source>The check holds.</source>
<translation>Die Probe stimmt.</translation>
</message>
<message>
<source>The check fails: the value is no solution.</source>
<translation>Die Probe stimmt nicht: der Wert ist keine Lösung.</translation>
</message>
<message>
<source>It is true for all values.</source>
<translation>Das gilt für alle Werte.</translation>
</message>
<message>
<source>The angles are read as degrees.</source>
<translation>Die Winkel sind in Grad gelesen.</translation>
</message>
<message>
<source>Both hold for some of the angles only; say in which quadrant the angle is.</source>
<translation>Beides gilt nur für einige der Winkel; geben Sie an, in welchem Quadranten der Winkel liegt.</translation>
</message>
<message>
<source>All the solutions of one turn; no interval is stated.</source>
<translation>Alle Lösungen einer vollen Umdrehung; es ist kein Intervall angegeben.</translation>
</message>
<message>
<source>It fits, but other angles do too; state the interval that is meant.</source>
<translation>Es passt, aber andere Winkel passen auch; geben Sie das gemeinte Intervall an.</translation>
</message>
<message>
<source>It fits the equation but lies outside the interval.</source>
<translation>Es erfüllt die Gleichung, liegt aber außerhalb des Intervalls.</translation>
</message>
<message>
<source>The value is rounded.</source>
<translation>Der Wert ist gerundet.</translation>
</message>
<message>
<source>Rounded.</source>
<translation>Gerundet.</translation>
</message>
<message>
<source>The value is rounded to a whole number.</source>
<translation>Der Wert ist auf eine ganze Zahl gerundet.</translation>
</message>
<message>
<source>It is the nearest whole number; the accuracy that is meant is not said.</source>
<translation>Es ist die nächste ganze Zahl; welche Genauigkeit gemeint ist, steht nicht da.</translation>
</message>
<message>
<source>The decimal is cut off; rounding would change its last digit.</source>
<translation>Die Dezimalzahl ist abgeschnitten; beim Runden wäre die letzte Ziffer anders.</translation>
</message>
<message>
<source>Rounded to {what}.</source>
<translation>Gerundet auf {what}.</translation>
</message>
<message>
<source>The value is rounded; to {what} it is {a}.</source>
<translation>Der Wert ist gerundet; auf {what} genau ist er {a}.</translation>
</message>
<message>
<source>To {what} the value is {a}.</source>
<translation>Auf {what} gerundet ist der Wert {a}.</translation>
</message>
<message>
<source>1 d.p.</source>
<translation>eine Nachkommastelle</translation>
</message>
<message>
<source>{number} d.p.</source>
<translation>{number} Nachkommastellen</translation>
</message>
<message>
<source>1 s.f.</source>
<translation>eine geltende Ziffer</translation>
</message>
<message>
<source>{number} s.f.</source>
<translation>{number} geltende Ziffern</translation>
</message>
<message>
<source>nearest integer</source>
<translation>Ganze</translation>
</message>
<message>
<source>nearest ten</source>
<translation>Zehner</translation>
</message>
<message>
<source>nearest hundred</source>
<translation>Hunderter</translation>
</message>
<message>
<source>nearest thousand</source>
<translation>Tausender</translation>
</message>
<message>
<source>nearest tenth</source>
<translation>Zehntel</translation>
</message>
<message>
<source>nearest hundredth</source>
<translation>Hundertstel</translation>
</message>
<message>
<source>nearest thousandth</source>
<translation>Tausendstel</translation>
</message>
<message>
<source>The time for this comparison ran out.</source>
<translation>Die Zeit für diesen Vergleich ist abgelaufen.</translation>
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
<source>The time for this working ran out.</source>
<translation>Die Zeit für diese Rechnung ist abgelaufen.</translation>
</message>
<message>
<source>This line could not be judged; the others are. See the log.</source>
<translation>Diese Zeile ließ sich nicht beurteilen, die anderen schon. Siehe Protokoll.</translation>
</message>
<message>
<source>The numbers or powers are too large to work out.</source>
<translation>Die Zahlen oder Hochzahlen sind zu groß zum Ausrechnen.</translation>
</message>
<message>
<source>It holds a construct that is not worked out here.</source>
<translation>Sie enthält etwas, das hier nicht ausgerechnet wird.</translation>
</message>
<message>
<source>It holds a construct whose solutions are not worked out here.</source>
<translation>Sie enthält etwas, dessen Lösungen hier nicht berechnet werden.</translation>
</message>
<message>
<source>One of the two has no value, such as a division by zero.</source>
<translation>Einer der beiden Terme hat keinen Wert, etwa weil durch null geteilt wird.</translation>
</message>
<message>
<source>A letter may change with the one that is differentiated or integrated by.</source>
<translation>Eine Variable kann von der abhängen, nach der abgeleitet oder integriert wird.</translation>
</message>
<message>
<source>The two are integrated by different letters.</source>
<translation>Die beiden werden nach verschiedenen Variablen integriert.</translation>
</message>
<message>
<source>An integral stands inside something else.</source>
<translation>Ein Integral steht innerhalb eines anderen Terms.</translation>
</message>
<message>
<source>The index of a root is a letter, and it matters whether it is odd or even.</source>
<translation>Der Wurzelexponent ist eine Variable, und es kommt darauf an, ob er gerade oder ungerade ist.</translation>
</message>
<message>
<source>No point was found where both have a value.</source>
<translation>Es fand sich keine Stelle, an der beide einen Wert haben.</translation>
</message>
<message>
<source>Too few points were found where both have a value.</source>
<translation>Es fanden sich zu wenige Stellen, an denen beide einen Wert haben.</translation>
</message>
<message>
<source>It is not clear how this line comes from the expression before it.</source>
<translation>Es ist nicht klar, wie diese Zeile aus dem Term davor entsteht.</translation>
</message>
<message>
<source>It is not clear how this line comes from the rule before it.</source>
<translation>Es ist nicht klar, wie diese Zeile aus der Regel davor entsteht.</translation>
</message>
<message>
<source>It is not clear where the equation comes from.</source>
<translation>Es ist nicht klar, woher die Gleichung kommt.</translation>
</message>
<message>
<source>It is not clear where the inequality comes from.</source>
<translation>Es ist nicht klar, woher die Ungleichung kommt.</translation>
</message>
<message>
<source>It is not clear which value this line carries on.</source>
<translation>Es ist nicht klar, welchen Wert diese Zeile weiterführt.</translation>
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
<source>The equals signs run on: the last value is worked out from the one before, but the first is another number. Write it as two lines.</source>
<translation>Die Gleichheitszeichen laufen weiter: der letzte Wert ist aus dem davor berechnet, aber der erste ist eine andere Zahl. Schreiben Sie zwei Zeilen daraus.</translation>
</message>
<message>
<source>A division by zero stands on this line; it has no value.</source>
<translation>In dieser Zeile wird durch null geteilt; sie hat keinen Wert.</translation>
</message>
<message>
<source>The line before holds a division by zero; it has no value.</source>
<translation>In der Zeile davor wird durch null geteilt; sie hat keinen Wert.</translation>
</message>
<message>
<source>Vectors are not judged.</source>
<translation>Vektoren werden nicht beurteilt.</translation>
</message>
<message>
<source>It does not follow from the line before; it may be a further equation. Say which is meant.</source>
<translation>Sie folgt nicht aus der Zeile davor; vielleicht ist sie eine weitere Gleichung. Geben Sie an, was gemeint ist.</translation>
</message>
<message>
<source>From the lines before together.</source>
<translation>Aus den Zeilen davor zusammen.</translation>
</message>
<message>
<source>From lines {number} together.</source>
<translation>Aus Zeile {number}.</translation>
</message>
<message>
<source>From lines {a} together.</source>
<translation>Aus den Zeilen {a} zusammen.</translation>
</message>
<message>
<source>Judged from line {number}, as line {count} could not be read.</source>
<translation>Aus Zeile {number} beurteilt, da Zeile {count} nicht zu lesen war.</translation>
</message>
<message>
<source>Taken as given for the lines after it.</source>
<translation>Wird für die folgenden Zeilen als gegeben genommen.</translation>
</message>
<message>
<source>Taken as a condition from here on.</source>
<translation>Gilt von hier an als Bedingung.</translation>
</message>
<message>
<source>Taken as a condition on the letter.</source>
<translation>Gilt als Bedingung für die Variable.</translation>
</message>
<message>
<source>Taken as a further equation of the system.</source>
<translation>Gilt als weitere Gleichung des Gleichungssystems.</translation>
</message>
<message>
<source>a further equation of the system</source>
<translation>eine weitere Gleichung des Gleichungssystems</translation>
</message>
<message>
<source>meant to follow</source>
<translation>als Folgerung gemeint</translation>
</message>
<message>
<source>A condition on the letter, taken as given.</source>
<translation>Eine Bedingung für die Variable, als gegeben genommen.</translation>
</message>
<message>
<source>A further condition, taken as given.</source>
<translation>Eine weitere Bedingung, als gegeben genommen.</translation>
</message>
<message>
<source>With constants that are to be found.</source>
<translation>Mit Konstanten, die noch zu bestimmen sind.</translation>
</message>
<message>
<source>A name for later lines.</source>
<translation>Ein Name für spätere Zeilen.</translation>
</message>
<message>
<source>The two letters are exchanged, as for an inverse.</source>
<translation>Die beiden Variablen sind vertauscht, wie bei der Umkehrfunktion.</translation>
</message>
<message>
<source>An expression after an equation.</source>
<translation>Ein Term nach einer Gleichung.</translation>
</message>
<message>
<source>The expression is given a name.</source>
<translation>Der Term bekommt einen Namen.</translation>
</message>
<message>
<source>The expression is set equal to a value.</source>
<translation>Der Term wird einem Wert gleichgesetzt.</translation>
</message>
<message>
<source>The expression is set equal to a value that is not stated.</source>
<translation>Der Term wird einem Wert gleichgesetzt, der nicht angegeben ist.</translation>
</message>
<message>
<source>{a} is set equal to 0.</source>
<translation>{a} wird gleich 0 gesetzt.</translation>
</message>
<message>
<source>{a} is set equal to {b}, which is taken as given.</source>
<translation>{a} wird gleich {b} gesetzt; das wird als gegeben genommen.</translation>
</message>
<message>
<source>Then it is set equal to {a}.</source>
<translation>Dann wird es gleich {a} gesetzt.</translation>
</message>
<message>
<source>The discriminant.</source>
<translation>Die Diskriminante.</translation>
</message>
<message>
<source>A constant of integration may be missing.</source>
<translation>Vielleicht fehlt eine Integrationskonstante.</translation>
</message>
<message>
<source>The derivative of this line is not the line before.</source>
<translation>Die Ableitung dieser Zeile ist nicht die Zeile davor.</translation>
</message>
<message>
<source>Both sides of line {number} differentiated give another equation.</source>
<translation>Werden beide Seiten von Zeile {number} abgeleitet, ergibt sich eine andere Gleichung.</translation>
</message>
<message>
<source>Put into the function it does not give {a}.</source>
<translation>In die Funktion eingesetzt ergibt es nicht {a}.</translation>
</message>
<message>
<source>From the coefficients, as the two sides are equal for every {a}.</source>
<translation>Aus den Koeffizienten, da die beiden Seiten für jedes {a} gleich sind.</translation>
</message>
<message>
<source>The two sides are equal for every {a} only with {b}.</source>
<translation>Die beiden Seiten sind nur mit {b} für jedes {a} gleich.</translation>
</message>
<message>
<source>The whole number and the fraction are read as a product.</source>
<translation>Die ganze Zahl und der Bruch sind als Produkt gelesen.</translation>
</message>
<message>
<source>The division is read as taking in all that stands after it.</source>
<translation>Die Division ist so gelesen, dass sie alles umfasst, was danach steht.</translation>
</message>
<message>
<source>The letter before the bracket is read as a factor.</source>
<translation>Der Buchstabe vor der Klammer ist als Faktor gelesen.</translation>
</message>
<message>
<source>What stands in brackets before the line is read the other way, as a factor or as a label.</source>
<translation>Was vor der Zeile in Klammern steht, ist andersherum gelesen, als Faktor oder als Nummer.</translation>
</message>
<message>
<source>The letters after the number are read as factors.</source>
<translation>Die Buchstaben nach der Zahl sind als Faktoren gelesen.</translation>
</message>
<message>
<source>The commas are read as parting numbers.</source>
<translation>Die Kommas sind als Trennung zwischen Zahlen gelesen.</translation>
</message>
<message>
<source>The power is read as belonging to the bracket.</source>
<translation>Die Hochzahl ist so gelesen, dass sie zur Klammer gehört.</translation>
</message>
<message>
<source>On line {number}: {sentence}</source>
<translation>In Zeile {number}: {sentence}</translation>
</message>
<message>
<source>The question could not be read: {sentence}</source>
<translation>Die Aufgabe war nicht zu lesen: {sentence}</translation>
</message>
<message>
<source>The given {name} could not be read and is left out.</source>
<translation>Das Gegebene {name} war nicht zu lesen und bleibt außer Betracht.</translation>
</message>
<message>
<source>Not the question as set, perhaps a misread.</source>
<translation>Nicht die gestellte Aufgabe, vielleicht falsch abgeschrieben.</translation>
</message>
</context>
</TS>
