<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" sourcelanguage="en" language="de">
<context>
<name>planner.app.actions</name>
<message>
<source>Hallway &amp;cabinet</source>
<translation>&amp;Flurschrank</translation>
</message>
<message>
<source>seedlings under two bars in a cabinet with a cut corner</source>
<translation>Jungpflanzen unter zwei Leisten in einem Schrank mit abgeschnittener Ecke</translation>
</message>
<message>
<source>hallway-cabinet-measured</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hallway cabinet, &amp;measured</source>
<translation>Flurschrank, &amp;gemessen</translation>
</message>
<message>
<source>the same cabinet with the options it was weighed against and a survey</source>
<translation>derselbe Schrank mit den erwogenen Varianten und einer Messung</translation>
</message>
<message>
<source>tent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Tent</source>
<translation>&amp;Zelt</translation>
</message>
<message>
<source>lettuce in a tent of 60 x 60 x 160 cm</source>
<translation>Salat in einem Zelt von 60 × 60 × 160 cm</translation>
</message>
<message>
<source>closet</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;L-shaped closet</source>
<translation>&amp;L-förmige Kammer</translation>
</message>
<message>
<source>herbs about a chimney, with a shelf in the light</source>
<translation>Kräuter um einen Schornstein, mit einem Regalbrett im Licht</translation>
</message>
<message>
<source>shelf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Shelf</source>
<translation>&amp;Regalbrett</translation>
</message>
<message>
<source>seedlings on a shelf that is open on three sides</source>
<translation>Jungpflanzen auf einem Regalbrett, das an drei Seiten offen ist</translation>
</message>
<message>
<source>rack</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Rack</source>
<translation>&amp;Gestell</translation>
</message>
<message>
<source>three tiers, with two bars under each shelf</source>
<translation>drei Etagen mit je zwei Leisten unter jedem Brett</translation>
</message>
<message>
<source>trays</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Tra&amp;ys</source>
<translation>Sch&amp;alen</translation>
</message>
<message>
<source>trays of two heights in a tent</source>
<translation>Schalen in zwei Höhen in einem Zelt</translation>
</message>
<message>
<source>new</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;New</source>
<translation>&amp;Neu</translation>
</message>
<message>
<source>Start an empty plan</source>
<translation>Einen leeren Plan beginnen</translation>
</message>
<message>
<source>new_window</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>New &amp;window</source>
<translation>Neues &amp;Fenster</translation>
</message>
<message>
<source>One more window, for another plan</source>
<translation>Ein weiteres Fenster, für einen anderen Plan</translation>
</message>
<message>
<source>Ctrl+Shift+N</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Open…</source>
<translation>&amp;Öffnen…</translation>
</message>
<message>
<source>Open a plan file</source>
<translation>Eine Plandatei öffnen</translation>
</message>
<message>
<source>example_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Open {what}, as a new plan; all of it is invented</source>
<translation>Als neuen Plan öffnen: {what}; alles erfunden</translation>
</message>
<message>
<source>save</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Save</source>
<translation>&amp;Speichern</translation>
</message>
<message>
<source>Save the plan to its file</source>
<translation>Den Plan in seiner Datei speichern</translation>
</message>
<message>
<source>save_as</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Save &amp;as…</source>
<translation>Speichern &amp;unter…</translation>
</message>
<message>
<source>Save the plan to another file</source>
<translation>Den Plan in einer anderen Datei speichern</translation>
</message>
<message>
<source>Ctrl+Shift+S</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp_from_file</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Add &amp;lamp from file…</source>
<translation>&amp;Lampe aus Datei…</translation>
</message>
<message>
<source>Hang a lamp whose light is in an LM-63 or EULUMDAT file</source>
<translation>Eine Lampe aufhängen, deren Licht in einer LM-63- oder EULUMDAT-Datei steht</translation>
</message>
<message>
<source>Ctrl+Shift+L</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>report</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Repor&amp;t…</source>
<translation>Beric&amp;ht…</translation>
</message>
<message>
<source>The decision, or a build sheet, on paper or as one file</source>
<translation>Die Entscheidung oder ein Bauzettel, auf Papier oder als Datei</translation>
</message>
<message>
<source>Ctrl+P</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>export_lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Selected &amp;lamp as LM-63…</source>
<translation>Gewählte &amp;Lampe als LM-63…</translation>
</message>
<message>
<source>Write the selected lamp's .ies file</source>
<translation>Die .ies-Datei der gewählten Lampe schreiben</translation>
</message>
<message>
<source>export_csv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Map as &amp;CSV…</source>
<translation>Karte als &amp;CSV…</translation>
</message>
<message>
<source>Write the light map as a table</source>
<translation>Die Lichtkarte als Tabelle schreiben</translation>
</message>
<message>
<source>export_json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Map and figures as &amp;JSON…</source>
<translation>Karte und Kennzahlen als &amp;JSON…</translation>
</message>
<message>
<source>Write map, figures and balance</source>
<translation>Karte, Kennzahlen und Bilanz schreiben</translation>
</message>
<message>
<source>export_drawing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Map as &amp;drawing…</source>
<translation>Karte als &amp;Zeichnung…</translation>
</message>
<message>
<source>Write the map as lines (SVG) or as PNG</source>
<translation>Die Karte als Linien (SVG) oder als PNG schreiben</translation>
</message>
<message>
<source>export_plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Save the pla&amp;n drawing…</source>
<translation>&amp;Grundriss speichern…</translation>
</message>
<message>
<source>Write it as shown: lines (SVG) or PNG</source>
<translation>Wie gezeigt schreiben: als Linien (SVG) oder PNG</translation>
</message>
<message>
<source>export_side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Save the &amp;side view…</source>
<translation>&amp;Seitenansicht speichern…</translation>
</message>
<message>
<source>copy_map</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Copy the &amp;map</source>
<translation>&amp;Karte kopieren</translation>
</message>
<message>
<source>Put the map as a picture on the clipboard</source>
<translation>Die Karte als Bild in die Zwischenablage legen</translation>
</message>
<message>
<source>copy_plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Copy the &amp;plan drawing</source>
<translation>&amp;Grundriss kopieren</translation>
</message>
<message>
<source>Put it on the clipboard as it is shown</source>
<translation>Wie gezeigt in die Zwischenablage legen</translation>
</message>
<message>
<source>copy_side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Copy the &amp;side view</source>
<translation>&amp;Seitenansicht kopieren</translation>
</message>
<message>
<source>export_picture</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Picture of the window…</source>
<translation>&amp;Bild des Fensters…</translation>
</message>
<message>
<source>Write the window as a PNG picture</source>
<translation>Das Fenster als PNG-Bild schreiben</translation>
</message>
<message>
<source>close</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Close window</source>
<translation>Fenster s&amp;chließen</translation>
</message>
<message>
<source>Close this window and its plan</source>
<translation>Dieses Fenster und seinen Plan schließen</translation>
</message>
<message>
<source>quit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Quit</source>
<translation>Been&amp;den</translation>
</message>
<message>
<source>Close the program, all its windows</source>
<translation>Das Programm mit allen Fenstern schließen</translation>
</message>
<message>
<source>Ctrl+Q</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>add_lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Add lamp</source>
<translation>&amp;Lampe hinzufügen</translation>
</message>
<message>
<source>Hang one more lamp like the selected one</source>
<translation>Noch eine Lampe wie die gewählte aufhängen</translation>
</message>
<message>
<source>Ctrl+L</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>duplicate</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>D&amp;uplicate</source>
<translation>&amp;Duplizieren</translation>
</message>
<message>
<source>Put copies beside the selected lamps and obstacles</source>
<translation>Kopien neben die gewählten Lampen und Hindernisse setzen</translation>
</message>
<message>
<source>Ctrl+D</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>copy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Cop&amp;y</source>
<translation>Ko&amp;pieren</translation>
</message>
<message>
<source>Copy the selected lamps and obstacles as text</source>
<translation>Die gewählten Lampen und Hindernisse als Text kopieren</translation>
</message>
<message>
<source>cut</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Cu&amp;t</source>
<translation>&amp;Ausschneiden</translation>
</message>
<message>
<source>Copy what is selected and take it away</source>
<translation>Gewähltes kopieren und wegnehmen</translation>
</message>
<message>
<source>paste</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Paste</source>
<translation>&amp;Einfügen</translation>
</message>
<message>
<source>Put in what was copied, of any plan, or the lamp a line of a data sheet describes</source>
<translation>Kopiertes einsetzen, auch aus einem anderen Plan, oder die Lampe, die eine Datenblattzeile beschreibt</translation>
</message>
<message>
<source>remove</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Re&amp;move</source>
<translation>Ent&amp;fernen</translation>
</message>
<message>
<source>Take what is selected away</source>
<translation>Gewähltes wegnehmen</translation>
</message>
<message>
<source>select_lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Select all &amp;lamps</source>
<translation>Alle Lampen &amp;wählen</translation>
</message>
<message>
<source>Select every lamp</source>
<translation>Jede Lampe wählen</translation>
</message>
<message>
<source>history</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hist&amp;ory…</source>
<translation>&amp;Verlauf…</translation>
</message>
<message>
<source>The steps made so far; a click goes back, or forward again</source>
<translation>Die bisherigen Schritte; ein Klick geht zurück oder wieder vor</translation>
</message>
<message>
<source>Ctrl+Alt+Z</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>level_lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>All lamps to this &amp;height</source>
<translation>Alle La&amp;mpen auf diese Höhe</translation>
</message>
<message>
<source>Hang all lamps as high as the selected one</source>
<translation>Alle Lampen so hoch hängen wie die gewählte</translation>
</message>
<message>
<source>Ctrl+Shift+H</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>align_{edge}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Bring {line} in line with the one that leads</source>
<translation>Nach dem führenden Stück ausrichten: {line}</translation>
</message>
<message>
<source>left</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Left sides</source>
<translation>&amp;Linke Seiten</translation>
</message>
<message>
<source>left sides</source>
<translation>linke Seiten</translation>
</message>
<message>
<source>centre</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Centres</source>
<translation>Mitten h&amp;intereinander</translation>
</message>
<message>
<source>centres, one behind the other,</source>
<translation>Mitten, hintereinander</translation>
</message>
<message>
<source>right</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Right sides</source>
<translation>&amp;Rechte Seiten</translation>
</message>
<message>
<source>right sides</source>
<translation>rechte Seiten</translation>
</message>
<message>
<source>front</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Front sides</source>
<translation>&amp;Vordere Seiten</translation>
</message>
<message>
<source>front sides</source>
<translation>vordere Seiten</translation>
</message>
<message>
<source>middle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Middles</source>
<translation>Mitten &amp;nebeneinander</translation>
</message>
<message>
<source>middles, one beside the other,</source>
<translation>Mitten, nebeneinander</translation>
</message>
<message>
<source>back</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Back sides</source>
<translation>&amp;Hintere Seiten</translation>
</message>
<message>
<source>back sides</source>
<translation>hintere Seiten</translation>
</message>
<message>
<source>gaps_across</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Equal &amp;gaps across</source>
<translation>Gleiche &amp;Abstände quer</translation>
</message>
<message>
<source>Equal gaps from left to right</source>
<translation>Gleiche Abstände von links nach rechts</translation>
</message>
<message>
<source>gaps_deep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Equal gaps in &amp;depth</source>
<translation>Gleiche Abstände in der &amp;Tiefe</translation>
</message>
<message>
<source>Equal gaps from front to back</source>
<translation>Gleiche Abstände von vorn nach hinten</translation>
</message>
<message>
<source>shares_across</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Spread across</source>
<translation>&amp;Quer verteilen</translation>
</message>
<message>
<source>Each over its share of the width</source>
<translation>Jedes über seinem Anteil der Breite</translation>
</message>
<message>
<source>shares_deep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Spread &amp;in depth</source>
<translation>In der Ti&amp;efe verteilen</translation>
</message>
<message>
<source>Each over its share of the depth</source>
<translation>Jedes über seinem Anteil der Tiefe</translation>
</message>
<message>
<source>add_shelf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Put a shelf into the middle of the space</source>
<translation>Ein Regalbrett in die Mitte des Raums setzen</translation>
</message>
<message>
<source>add_tray</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Tray</source>
<translation>&amp;Schale</translation>
</message>
<message>
<source>Put a tray with a canopy of its own on the floor</source>
<translation>Eine Schale mit eigenem Blätterdach auf den Boden stellen</translation>
</message>
<message>
<source>add_pot</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Pot</source>
<translation>&amp;Topf</translation>
</message>
<message>
<source>Put a pot into the middle of the space</source>
<translation>Einen Topf in die Mitte des Raums stellen</translation>
</message>
<message>
<source>add_box</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Box</source>
<translation>&amp;Kasten</translation>
</message>
<message>
<source>Put a box into the middle of the space</source>
<translation>Einen Kasten in die Mitte des Raums stellen</translation>
</message>
<message>
<source>keep_variant</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Keep as an option</source>
<translation>Als Variante &amp;behalten</translation>
</message>
<message>
<source>Keep the sketch as an option, to see it side by side with the plan</source>
<translation>Die Skizze als Variante behalten, um sie neben dem Plan zu sehen</translation>
</message>
<message>
<source>Ctrl+K</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>keep_new</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Keep it as ne&amp;w</source>
<translation>Als &amp;neu behalten</translation>
</message>
<message>
<source>Keep an option with new lamps and clean walls</source>
<translation>Eine Variante mit neuen Lampen und sauberen Wänden behalten</translation>
</message>
<message>
<source>keep_later</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Keep it a year o&amp;n</source>
<translation>Ein &amp;Jahr später behalten</translation>
</message>
<message>
<source>Keep an option with lamps a year older</source>
<translation>Eine Variante mit ein Jahr älteren Lampen behalten</translation>
</message>
<message>
<source>unit_cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Centimetres</source>
<translation>&amp;Zentimeter</translation>
</message>
<message>
<source>Show lengths in centimetres</source>
<translation>Längen in Zentimetern zeigen</translation>
</message>
<message>
<source>unit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>unit_in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Inches</source>
<translation>Z&amp;oll</translation>
</message>
<message>
<source>Show lengths in inches</source>
<translation>Längen in Zoll zeigen</translation>
</message>
<message>
<source>map_{name}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Colour the light with the map '{name}', dark where it is dark</source>
<translation>Das Licht mit der Farbkarte „{name}“ färben, dunkel, wo es dunkel ist</translation>
</message>
<message>
<source>colour_map</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shows_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Show {map_name} on the map, in {map_unit}</source>
<translation>{map_name} auf der Karte zeigen, in {map_unit}</translation>
</message>
<message>
<source>shows</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cells_{count}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{count} x {count}</source>
<translation>{count} × {count}</translation>
</message>
<message>
<source>Compute the light in {count} by {count} cells over the space</source>
<translation>Das Licht in {count} mal {count} Zellen über den Raum berechnen</translation>
</message>
<message>
<source>cells</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>settings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Settings…</source>
<translation>E&amp;instellungen…</translation>
</message>
<message>
<source>Units, colours, map cells and theme in one place</source>
<translation>Einheiten, Farben, Kartenzellen und Design an einem Ort</translation>
</message>
<message>
<source>Ctrl+,</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>contours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Contour &amp;lines</source>
<translation>Kont&amp;urlinien</translation>
</message>
<message>
<source>Lines of equal PPFD</source>
<translation>Linien gleicher PPFD</translation>
</message>
<message>
<source>Ctrl+Shift+C</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>band_wash</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Mark the target &amp;band</source>
<translation>Ziel&amp;bereich markieren</translation>
</message>
<message>
<source>Mark what is under, inside and over the target band</source>
<translation>Markieren, was unter, im und über dem Zielbereich liegt</translation>
</message>
<message>
<source>Ctrl+B</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gains</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Mark which &amp;wall to line first</source>
<translation>Zuerst auszukleidende &amp;Wand markieren</translation>
</message>
<message>
<source>Mark at each wall what ten points more of reflectance would bring</source>
<translation>An jeder Wand markieren, was zehn Punkte mehr Reflexionsgrad brächten</translation>
</message>
<message>
<source>Ctrl+G</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ladder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>L&amp;adder of heights</source>
<translation>Höhenle&amp;iter</translation>
</message>
<message>
<source>Show beside the selected lamp what the light would be at each height</source>
<translation>Neben der gewählten Lampe zeigen, wie das Licht in jeder Höhe wäre</translation>
</message>
<message>
<source>Ctrl+H</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>stretched</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Colours over the light p&amp;resent</source>
<translation>Farben über das &amp;vorhandene Licht</translation>
</message>
<message>
<source>Spread the colours from the lowest to the highest light present instead of from dark</source>
<translation>Die Farben vom kleinsten bis zum größten vorhandenen Licht spreizen statt von Dunkel an</translation>
</message>
<message>
<source>Ctrl+Shift+R</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>theme_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>theme</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>system</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>As the &amp;system</source>
<translation>Wie das &amp;System</translation>
</message>
<message>
<source>Light or dark as the desktop</source>
<translation>Hell oder dunkel wie der Desktop</translation>
</message>
<message>
<source>light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Light</source>
<translation>&amp;Hell</translation>
</message>
<message>
<source>Dark text on light ground</source>
<translation>Dunkler Text auf hellem Grund</translation>
</message>
<message>
<source>dark</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Dark</source>
<translation>&amp;Dunkel</translation>
</message>
<message>
<source>Light text on dark ground</source>
<translation>Heller Text auf dunklem Grund</translation>
</message>
<message>
<source>page_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Ctrl+{number}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>page</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sketch</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Sketch</source>
<translation>&amp;Skizze</translation>
</message>
<message>
<source>The space to scale with its light</source>
<translation>Der Raum im Maßstab mit seinem Licht</translation>
</message>
<message>
<source>side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Side &amp;by side</source>
<translation>&amp;Nebeneinander</translation>
</message>
<message>
<source>The plan beside its options; sweeps, answers and what it is worth</source>
<translation>Der Plan neben seinen Varianten; Reihen, Antworten und ob es sich lohnt</translation>
</message>
<message>
<source>survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>S&amp;urvey</source>
<translation>&amp;Messung</translation>
</message>
<message>
<source>Readings at the holes of a board, laid over the estimate</source>
<translation>Messwerte an den Löchern eines Lochbretts, über die Schätzung gelegt</translation>
</message>
<message>
<source>zoom_in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lar&amp;ger</source>
<translation>&amp;Größer</translation>
</message>
<message>
<source>Enlarge the drawing</source>
<translation>Die Zeichnung vergrößern</translation>
</message>
<message>
<source>Ctrl+=</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>zoom_out</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Smaller</source>
<translation>Kleiner</translation>
</message>
<message>
<source>Make the drawing smaller</source>
<translation>Die Zeichnung verkleinern</translation>
</message>
<message>
<source>fit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Fit drawing</source>
<translation>Zeichnung ein&amp;passen</translation>
</message>
<message>
<source>Show the whole space as large as it goes</source>
<translation>Den ganzen Raum so groß wie möglich zeigen</translation>
</message>
<message>
<source>Ctrl+0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>measure</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>M&amp;easure</source>
<translation>&amp;Messen</translation>
</message>
<message>
<source>Draw a measuring line from one point to another</source>
<translation>Eine Messlinie von einem Punkt zum anderen ziehen</translation>
</message>
<message>
<source>Ctrl+M</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>large_side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>S&amp;ide view large</source>
<translation>Seitenansicht g&amp;roß</translation>
</message>
<message>
<source>Give the side view the room of the plan; press again to return</source>
<translation>Der Seitenansicht den Platz des Grundrisses geben; nochmals drücken, um zurückzukehren</translation>
</message>
<message>
<source>Ctrl+E</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>full_screen</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Full &amp;screen</source>
<translation>V&amp;ollbild</translation>
</message>
<message>
<source>Use the whole screen; press again to return</source>
<translation>Den ganzen Bildschirm nutzen; nochmals drücken, um zurückzukehren</translation>
</message>
<message>
<source>F11</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>help_start</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>How to &amp;start</source>
<translation>&amp;Erste Schritte</translation>
</message>
<message>
<source>The first five minutes</source>
<translation>Die ersten fünf Minuten</translation>
</message>
<message>
<source>F1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tour</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Show me &amp;round</source>
<translation>&amp;Rundgang</translation>
</message>
<message>
<source>Six steps in place: size, lamp, lining, figures, pages</source>
<translation>Sechs Schritte am Ort: Maße, Lampe, Auskleidung, Kennzahlen, Seiten</translation>
</message>
<message>
<source>help_guide</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A &amp;worked example</source>
<translation>&amp;Durchgeführtes Beispiel</translation>
</message>
<message>
<source>From the tape measure to the survey</source>
<translation>Vom Maßband bis zur Messung</translation>
</message>
<message>
<source>help_cautions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Cautions</source>
<translation>&amp;Warnhinweise</translation>
</message>
<message>
<source>Heat, water, electricity and eyes</source>
<translation>Wärme, Wasser, Strom und Augen</translation>
</message>
<message>
<source>help_glossary</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Glossary</source>
<translation>&amp;Glossar</translation>
</message>
<message>
<source>What the words and figures mean</source>
<translation>Was die Wörter und Zahlen bedeuten</translation>
</message>
<message>
<source>help_lamp-files</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Lamps from files</source>
<translation>&amp;Lampen aus Dateien</translation>
</message>
<message>
<source>What the program reads, and what it asks</source>
<translation>Was das Programm liest und was es fragt</translation>
</message>
<message>
<source>help_spectra</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>S&amp;pectra</source>
<translation>&amp;Spektren</translation>
</message>
<message>
<source>Lux, lumens and photons</source>
<translation>Lux, Lumen und Photonen</translation>
</message>
<message>
<source>help_news</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>What is &amp;new</source>
<translation>Was ist &amp;neu</translation>
</message>
<message>
<source>What each version brought</source>
<translation>Was jede Version gebracht hat</translation>
</message>
<message>
<source>data_folder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Open data &amp;folder</source>
<translation>Daten&amp;ordner öffnen</translation>
</message>
<message>
<source>Where your own lamps and linings are kept</source>
<translation>Wo Ihre eigenen Lampen und Auskleidungen liegen</translation>
</message>
<message>
<source>about</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;About</source>
<translation>&amp;Über</translation>
</message>
<message>
<source>Versions and licence; details to copy</source>
<translation>Versionen und Lizenz; Angaben zum Kopieren</translation>
</message>
<message>
<source>file</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;File</source>
<translation>&amp;Datei</translation>
</message>
<message>
<source>new new_window open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>recent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Open &amp;recent</source>
<translation>&amp;Zuletzt geöffnet</translation>
</message>
<message>
<source>example</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Open an exa&amp;mple</source>
<translation>&amp;Beispiel öffnen</translation>
</message>
<message>
<source>- save save_as - lamp_from_file</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>export</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Export</source>
<translation>&amp;Exportieren</translation>
</message>
<message>
<source>export_csv export_json export_drawing export_plan export_side export_picture - export_lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>report - close quit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>edit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Edit</source>
<translation>&amp;Bearbeiten</translation>
</message>
<message>
<source>undo redo history - add_lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>add_lamp_kind</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Add lamp from &amp;catalogue</source>
<translation>Lampe aus &amp;Katalog</translation>
</message>
<message>
<source>add_obstacle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Add o&amp;bstacle</source>
<translation>&amp;Hindernis hinzufügen</translation>
</message>
<message>
<source>add_shelf add_tray add_pot add_box</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>- select_lamps duplicate cut copy paste remove -</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>picture</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Copy as p&amp;icture</source>
<translation>Al&amp;s Bild kopieren</translation>
</message>
<message>
<source>copy_map copy_plan copy_side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>arrange</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Ali&amp;gn and spread</source>
<translation>Aus&amp;richten und verteilen</translation>
</message>
<message>
<source>- gaps_across gaps_deep shares_across shares_deep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>level_lamps - keep_variant keep_new keep_later - settings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>view</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;View</source>
<translation>&amp;Ansicht</translation>
</message>
<message>
<source>&amp;Page</source>
<translation>&amp;Seite</translation>
</message>
<message>
<source>page_sketch page_side page_survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Units</source>
<translation>&amp;Einheiten</translation>
</message>
<message>
<source>unit_cm unit_in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Colour map</source>
<translation>&amp;Farbkarte</translation>
</message>
<message>
<source>Map s&amp;hows</source>
<translation>Karte &amp;zeigt</translation>
</message>
<message>
<source>&amp;Map cells</source>
<translation>&amp;Kartenzellen</translation>
</message>
<message>
<source>&amp;Theme</source>
<translation>&amp;Design</translation>
</message>
<message>
<source>theme_system theme_light theme_dark</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>- contours band_wash gains ladder stretched - zoom_in zoom_out fit measure large_side full_screen</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>help</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;Help</source>
<translation>&amp;Hilfe</translation>
</message>
<message>
<source>help_start tour help_guide help_cautions help_glossary help_lamp-files help_spectra help_news - data_folder - about</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Undo</source>
<translation>Rückgängig</translation>
</message>
<message>
<source>Redo</source>
<translation>Wiederholen</translation>
</message>
<message>
<source>Ctrl+Y Ctrl+Shift+Z</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>undo</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>redo</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.ahead</name>
<message>
<source>planner.estimate.worth</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.estimate.compare</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.estimate.odds</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.estimate.sweep_points</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.estimate.sweep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.reports.exports</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.side.map_sheet</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.side.page</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.survey.comparison</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.survey.pictures</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.survey.page</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.side.sweep_board</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.side.sweep_form</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.side.find_form</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.plots.schedule_chart</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.side.schedule_board</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.app.pages.side.worth_form</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.canvas.drawing</name>
<message>
<source>duplicate</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cut</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>copy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>add_lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hang a lamp here</source>
<translation>Hier eine Lampe aufhängen</translation>
</message>
<message>
<source>add_shelf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Put a shelf here</source>
<translation>Hier ein Regalbrett anbringen</translation>
</message>
<message>
<source>add_tray</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Put a tray here</source>
<translation>Hier eine Schale aufstellen</translation>
</message>
<message>
<source>add_pot</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Put a pot here</source>
<translation>Hier einen Topf hinstellen</translation>
</message>
<message>
<source>add_box</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Put a box here</source>
<translation>Hier einen Kasten hinstellen</translation>
</message>
<message>
<source>paste</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Paste here</source>
<translation>Hier einfügen</translation>
</message>
<message>
<source>Stop measuring</source>
<translation>Messen beenden</translation>
</message>
<message>
<source>Measure</source>
<translation>Messen</translation>
</message>
<message>
<source>Fit drawing</source>
<translation>Zeichnung einpassen</translation>
</message>
<message>
<source>nudge {part} {index} {band} {len}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name} {accessibleName}</source>
<translation>{name} {accessibleName}</translation>
</message>
</context>
<context>
<name>planner.app.canvas.elevation_drags</name>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>underside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>space-height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>band-edge</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a {word} has no height to change.</source>
<translation>{word}: hat keine Höhe, die sich ändern lässt.</translation>
</message>
<message>
<source>Lower</source>
<translation>Senken</translation>
</message>
<message>
<source>Raise</source>
<translation>Heben</translation>
</message>
<message>
<source>{label}: {limit_text}.</source>
<translation>{label}: {limit_text}.</translation>
</message>
<message>
<source>{_verb} {word}</source>
<translation>{_verb}: {word}</translation>
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_verb} lamps {numbers}</source>
<translation>{_verb}: Lampen {numbers}</translation>
</message>
<message>
<source>Lamps {numbers} hang behind one another here and move together.</source>
<translation>Lampen {numbers} hängen hier hintereinander und bewegen sich zusammen.</translation>
</message>
<message>
<source>Close canopy</source>
<translation>Blätterdach schließen</translation>
</message>
<message>
<source>Open canopy</source>
<translation>Blätterdach öffnen</translation>
</message>
<message>
<source>Canopy down to the floor</source>
<translation>Blätterdach bis zum Boden hinab</translation>
</message>
<message>
<source>Remove band edge</source>
<translation>Streifenkante entfernen</translation>
</message>
<message>
<source>Take edge away</source>
<translation>Kante wegnehmen</translation>
</message>
<message>
<source>Divide wall</source>
<translation>Wand teilen</translation>
</message>
<message>
<source>Divide wall here</source>
<translation>Wand hier teilen</translation>
</message>
<message>
<source>Up as far as it goes</source>
<translation>So hoch wie möglich</translation>
</message>
</context>
<context>
<name>planner.app.canvas.elevation_layer</name>
<message>
<source>Band {value}: {name}</source>
<translation>Streifen {value}: {name}</translation>
</message>
<message>
<source>wall {wall}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ignore</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.canvas.elevation_view</name>
<message>
<source>copy_side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>export_side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Side elevation</source>
<translation>Seitenansicht</translation>
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Look along {other}</source>
<translation>Blick entlang {other}</translation>
</message>
<message>
<source>{over}, {leans}</source>
<translation>{over}, {leans}</translation>
</message>
<message>
<source>{length} above the floor</source>
<translation>{length} über dem Boden</translation>
</message>
<message>
<source>at {length}</source>
<translation>bei {length}</translation>
</message>
<message>
<source>at {length} above the floor</source>
<translation>{length} über dem Boden</translation>
</message>
<message>
<source>Side view along {_axis}: ceiling at {format_length}, canopy at {format_length2} above the floor.</source>
<translation>Seitenansicht entlang {_axis}: Decke auf {format_length}, Blätterdach auf {format_length2} über dem Boden.</translation>
</message>
<message>
<source>, {leans}</source>
<translation>, {leans}</translation>
</message>
<message>
<source>Lamp {number} hangs {in_unit}{leans}.</source>
<translation>Lampe {number} hängt {in_unit}{leans}.</translation>
</message>
<message>
<source>{name} stands {format_length} above the floor.</source>
<translation>{name} steht {format_length} über dem Boden.</translation>
</message>
<message>
<source>Wall {value} changes its lining at {format_length} (edge {k}).</source>
<translation>Wand {value} wechselt die Auskleidung auf {format_length} (Kante {k}).</translation>
</message>
<message>
<source> {value}</source>
<translation> {value}</translation>
</message>
<message>
<source>In hand: {word}{which}.</source>
<translation>In der Hand: {word}{which}.</translation>
</message>
<message>
<source>wall {index}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Side view along {_axis}</source>
<translation>Seitenansicht entlang {_axis}</translation>
</message>
<message>
<source>{title}, light at {_axis} {format_length}</source>
<translation>{title}, Licht bei {_axis} {format_length}</translation>
</message>
</context>
<context>
<name>planner.app.canvas.hand</name>
<message>
<source>drag</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Measuring: drag from one point to another; Esc ends it.</source>
<translation>Messen: von einem Punkt zum anderen ziehen; Esc beendet es.</translation>
</message>
<message>
<source>Measured: {measured}</source>
<translation>Gemessen: {measured}</translation>
</message>
</context>
<context>
<name>planner.app.canvas.ink</name>
<message>
<source>#ff9d90</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#a4281c</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hatch {rgba} {rising} {ratio}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Smaller</source>
<translation>Kleiner</translation>
</message>
<message>
<source>Larger</source>
<translation>Größer</translation>
</message>
<message>
<source>{percent} %</source>
<translation>{percent} %</translation>
</message>
<message>
<source>Zoomed to {percent} %; show the whole space</source>
<translation>Vergrößerung {percent} %; den ganzen Raum zeigen</translation>
</message>
<message>
<source>Show the whole space, which is 100 %</source>
<translation>Den ganzen Raum zeigen, das sind 100 %</translation>
</message>
</context>
<context>
<name>planner.app.canvas.items</name>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Plan of a space of {wall_count} walls, {length} wide and {length2} deep.</source>
<translation>Grundriss eines Raums mit {wall_count} Wänden, {length} breit und {length2} tief.</translation>
</message>
<message>
<source>No lamp hangs in it.</source>
<translation>Darin hängt keine Lampe.</translation>
</message>
<message>
<source>Lamp {number}, {value}, hangs at x {length}, y {length2}.</source>
<translation>Lampe {number}, {value}, hängt bei x {length}, y {length2}.</translation>
</message>
<message>
<source>{name} stands at x {length}, y {length2}, {length3} to {length4} above the floor.</source>
<translation>{name} steht bei x {length}, y {length2}, {length3} bis {length4} über dem Boden.</translation>
</message>
<message>
<source>The light on {inside} runs from {ppfd} to {ppfd2}, on average {ppfd3} micromoles per square metre and second.</source>
<translation>Licht ({inside}): von {ppfd} bis {ppfd2}, im Mittel {ppfd3} Mikromol je Quadratmeter und Sekunde.</translation>
</message>
<message>
<source>The map shows {map_name}: {low} to {high} {map_unit}.</source>
<translation>Die Karte zeigt {map_name}: {low} bis {high} {map_unit}.</translation>
</message>
<message>
<source>{ppfd} on wall {k}</source>
<translation>{ppfd} auf Wand {k}</translation>
</message>
<message>
<source>On the walls at most: {listed}.</source>
<translation>Auf den Wänden höchstens: {listed}.</translation>
</message>
<message>
<source>In hand: {item_in_words}.</source>
<translation>In der Hand: {item_in_words}.</translation>
</message>
<message>
<source>lamp {value} at {figures}</source>
<translation>Lampe {value} bei {figures}</translation>
</message>
<message>
<source>{name} at {figures}</source>
<translation>{name} bei {figures}</translation>
</message>
<message>
<source>corner {value} at {figures}</source>
<translation>Ecke {value} bei {figures}</translation>
</message>
<message>
<source>, the door</source>
<translation>, die Tür</translation>
</message>
<message>
<source>wall {value}{door}, {figures}, lined with {names}</source>
<translation>Wand {value}{door}, {figures}, ausgekleidet mit {names}</translation>
</message>
<message>
<source>section line {figures}</source>
<translation>Schnittlinie {figures}</translation>
</message>
<message>
<source>Edge {value} of the linings of wall {value2}</source>
<translation>Kante {value} der Auskleidungen von Wand {value2}</translation>
</message>
<message>
<source>Section line</source>
<translation>Schnittlinie</translation>
</message>
<message>
<source>{title}{value}{door}</source>
<translation>{title}{value}{door}</translation>
</message>
<message>
<source>x {format_length}, y {format_length2}</source>
<translation>x {format_length}, y {format_length2}</translation>
</message>
<message>
<source>, {leans}</source>
<translation>, {leans}</translation>
</message>
<message>
<source>{spot}, turned by {rotation_deg}°{leans}</source>
<translation>{spot}, gedreht um {rotation_deg}°{leans}</translation>
</message>
<message>
<source>, turned by {rotation_deg}°</source>
<translation>, um {rotation_deg}° gedreht</translation>
</message>
<message>
<source>{spot}{turned}</source>
<translation>{spot}{turned}</translation>
</message>
<message>
<source>{format_length} long</source>
<translation>{format_length} lang</translation>
</message>
<message>
<source>from {spot} to {spot2}</source>
<translation>von {spot} bis {spot2}</translation>
</message>
</context>
<context>
<name>planner.app.canvas.ladder_scale</name>
<message>
<source>under the band</source>
<translation>unter dem Zielbereich</translation>
</message>
<message>
<source>in the band</source>
<translation>im Zielbereich</translation>
</message>
<message>
<source>over the band</source>
<translation>über dem Zielbereich</translation>
</message>
<message>
<source>{ppfd} · {value}</source>
<translation>{ppfd} · {value}</translation>
</message>
<message>
<source>Ladder of heights: here the mean is {ppfd}</source>
<translation>Höhenleiter: hier ist das Mittel {ppfd}</translation>
</message>
<message>
<source>, the {LOWEST} {percent} of it</source>
<translation>, die {LOWEST} {percent} davon</translation>
</message>
<message>
<source>, {_PLACES}</source>
<translation>, {_PLACES}</translation>
</message>
<message>
<source>{text}.</source>
<translation>{text}.</translation>
</message>
</context>
<context>
<name>planner.app.canvas.light_layer</name>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>contour {text} {key} {name} {name2} {ratio} {size}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.canvas.marks</name>
<message>
<source>preview, refining</source>
<translation>Vorschau, wird feiner</translation>
</message>
<message>
<source>over</source>
<translation>über</translation>
</message>
<message>
<source>in the band</source>
<translation>im Zielbereich</translation>
</message>
<message>
<source>under</source>
<translation>unter</translation>
</message>
<message>
<source>A</source>
<translation>A</translation>
</message>
<message>
<source>B</source>
<translation>B</translation>
</message>
</context>
<context>
<name>planner.app.canvas.plan_drags</name>
<message>
<source>The middle of a lamp stays inside the walls.</source>
<translation>Die Mitte einer Lampe bleibt innerhalb der Wände.</translation>
</message>
<message>
<source>The middle of an obstacle stays inside the walls.</source>
<translation>Die Mitte eines Hindernisses bleibt innerhalb der Wände.</translation>
</message>
<message>
<source>The middles of all that moves stay inside the walls.</source>
<translation>Die Mitten von allem, was sich bewegt, bleiben innerhalb der Wände.</translation>
</message>
<message>
<source>lamp-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>corner-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>corner-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-rotation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-rotation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wall-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Move wall</source>
<translation>Wand verschieben</translation>
</message>
<message>
<source>a {part} cannot be dragged.</source>
<translation>Das lässt sich nicht ziehen ({part}).</translation>
</message>
<message>
<source>this wall's place does not follow from the wall before it.</source>
<translation>die Lage dieser Wand folgt nicht aus der Wand davor.</translation>
</message>
<message>
<source>Move corner</source>
<translation>Ecke verschieben</translation>
</message>
<message>
<source>{label} with {names}</source>
<translation>{label} mit {names}</translation>
</message>
<message>
<source>Move</source>
<translation>Verschieben</translation>
</message>
<message>
<source>Rotate</source>
<translation>Drehen</translation>
</message>
<message>
<source>a {part} does not move by arrow keys.</source>
<translation>Das lässt sich nicht mit Pfeiltasten bewegen ({part}).</translation>
</message>
<message>
<source>All {done} lamps hang {high} over the canopy beneath.</source>
<translation>Alle {done} Lampen hängen {high} über dem Blätterdach darunter.</translation>
</message>
<message>
<source>{done} of {len} lamps hang {high} over the canopy beneath. No room so high: {in_words}.</source>
<translation>{done} von {len} Lampen hängen {high} über dem Blätterdach darunter. So hoch kein Platz: {in_words}.</translation>
</message>
<message>
<source>Set height of all lamps</source>
<translation>Höhe aller Lampen setzen</translation>
</message>
<message>
<source>Add corner</source>
<translation>Ecke hinzufügen</translation>
</message>
<message>
<source>Remove</source>
<translation>Entfernen</translation>
</message>
<message>
<source>Remove corner</source>
<translation>Ecke entfernen</translation>
</message>
<message>
<source>Cut off this corner</source>
<translation>Diese Ecke abschneiden</translation>
</message>
<message>
<source>Cut off corner</source>
<translation>Ecke abschneiden</translation>
</message>
<message>
<source>Rotate by {by_deg}°</source>
<translation>Um {by_deg}° drehen</translation>
</message>
<message>
<source>All lamps to this height</source>
<translation>Alle Lampen auf diese Höhe</translation>
</message>
<message>
<source>Judge the plan by its own canopy</source>
<translation>Den Plan nach seinem eigenen Blätterdach beurteilen</translation>
</message>
<message>
<source>Judge the plan by this canopy</source>
<translation>Den Plan nach diesem Blätterdach beurteilen</translation>
</message>
<message>
<source>Add corner here</source>
<translation>Hier Ecke hinzufügen</translation>
</message>
<message>
<source>Make this wall the door</source>
<translation>Diese Wand zur Tür machen</translation>
</message>
<message>
<source>Make door</source>
<translation>Tür einsetzen</translation>
</message>
<message>
<source>Close door</source>
<translation>Tür schließen</translation>
</message>
<message>
<source>Open door</source>
<translation>Tür öffnen</translation>
</message>
<message>
<source>Make this a plain wall</source>
<translation>Daraus eine einfache Wand machen</translation>
</message>
<message>
<source>Remove door</source>
<translation>Tür entfernen</translation>
</message>
</context>
<context>
<name>planner.app.canvas.plan_layers</name>
<message>
<source>Wall {value}: {measure}</source>
<translation>Wand {value}: {measure}</translation>
</message>
<message>
<source>{value}: {measure}</source>
<translation>{value}: {measure}</translation>
</message>
<message>
<source>{name} (above)</source>
<translation>{name} (darüber)</translation>
</message>
</context>
<context>
<name>planner.app.canvas.plan_view</name>
<message>
<source>Press L for a first lamp, or paste a line of its data sheet</source>
<translation>L drücken für eine erste Lampe oder eine Zeile ihres Datenblatts einfügen</translation>
</message>
<message>
<source>copy_plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>export_plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Plan drawing</source>
<translation>Grundriss</translation>
</message>
<message>
<source> Selected together: {names}.</source>
<translation> Zusammen gewählt: {names}.</translation>
</message>
<message>
<source>turn {part} {index} {len}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Turn section line</source>
<translation>Schnittlinie drehen</translation>
</message>
<message>
<source>Section through middle</source>
<translation>Schnitt durch die Mitte</translation>
</message>
<message>
<source>x {x}, y {y} {value}</source>
<translation>x {x}, y {y} {value}</translation>
</message>
<message>
<source>{on_map} at {place}</source>
<translation>{on_map} bei {place}</translation>
</message>
<message>
<source>; {len} selected, this one leads</source>
<translation>; {len} gewählt, dies führt</translation>
</message>
<message>
<source>{capital}{more}</source>
<translation>{capital}{more}</translation>
</message>
</context>
<context>
<name>planner.app.canvas.side_light</name>
<message>
<source>the canopy</source>
<translation>Blätterdach</translation>
</message>
<message>
<source>{off} {value} {canopy}, {over} above the floor</source>
<translation>{off} {value} „{canopy}“, {over} über dem Boden</translation>
</message>
<message>
<source>above</source>
<translation>über</translation>
</message>
<message>
<source>below</source>
<translation>unter</translation>
</message>
<message>
<source>leaves higher than {canopy}</source>
<translation>Blätter höher als „{canopy}“</translation>
</message>
<message>
<source>the leaves above it</source>
<translation>die Blätter darüber</translation>
</message>
<message>
<source>{ppfd} {where}; {leaves} are left out</source>
<translation>{ppfd} {where}; {leaves} sind nicht gerechnet</translation>
</message>
<message>
<source>{ppfd} at {format_length}</source>
<translation>{ppfd} bei {format_length}</translation>
</message>
<message>
<source>{axis} {format_length}</source>
<translation>{axis} {format_length}</translation>
</message>
<message>
<source>Light over its middle at {place}, up from the canopy: {join}.</source>
<translation>Licht über seiner Mitte bei {place}, vom Blätterdach aufwärts: {join}.</translation>
</message>
</context>
<context>
<name>planner.app.canvas.tools</name>
<message>
<source>type a number</source>
<translation>Zahl eintippen</translation>
</message>
<message>
<source>type a number, Tab for the next</source>
<translation>Zahl eintippen, Tab zur nächsten</translation>
</message>
<message>
<source>{_short} {said}{value}</source>
<translation>{_short} {said}{value}</translation>
</message>
<message>
<source>{words} {value}</source>
<translation>{words} {value}</translation>
</message>
<message>
<source>{format_length}</source>
<translation>{format_length}</translation>
</message>
<message>
<source>{whole} ({across} by {deep})</source>
<translation>{whole} ({across} × {deep})</translation>
</message>
</context>
<context>
<name>planner.app.canvas.wall_light</name>
<message>
<source>% of the</source>
<translation>% des</translation>
</message>
<message>
<source>light</source>
<translation>Lichts</translation>
</message>
<message>
<source>change,</source>
<translation>Änderung,</translation>
</message>
<message>
<source>µmol</source>
<translation>µmol</translation>
</message>
</context>
<context>
<name>planner.app.display</name>
<message>
<source>cividis</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>viridis</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inferno</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>contours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>band_wash</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gains</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ladder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>stretched</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.document</name>
<message>
<source>{merge_key}#{_gesture}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.edit_steps</name>
<message>
<source>Add lamp</source>
<translation>Lampe hinzufügen</translation>
</message>
<message>
<source>Add {inside}</source>
<translation>{inside} hinzufügen</translation>
</message>
<message>
<source>Duplicate</source>
<translation>Duplizieren</translation>
</message>
<message>
<source>The copy stands a storey up, with the lamps of its tier.</source>
<translation>Die Kopie steht ein Stockwerk höher, mit den Lampen ihrer Etage.</translation>
</message>
<message>
<source>Remove</source>
<translation>Entfernen</translation>
</message>
<message>
<source>add_lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>duplicate</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>copy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cut</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>paste</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>remove</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>select_lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>level_lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gaps_across</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gaps_deep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shares_across</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shares_deep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Distribute</source>
<translation>Abstände angleichen</translation>
</message>
<message>
<source>Spread</source>
<translation>Verteilen</translation>
</message>
<message>
<source>align_{kind}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Align</source>
<translation>Ausrichten</translation>
</message>
<message>
<source>add_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Paste</source>
<translation>Einfügen</translation>
</message>
<message>
<source>There is nothing to paste: copy a lamp or an obstacle, of any plan, or a line of a data sheet such as '{EXAMPLE}'.</source>
<translation>Es gibt nichts einzufügen: eine Lampe oder ein Hindernis kopieren, auch aus einem anderen Plan, oder eine Datenblattzeile wie „{EXAMPLE}“.</translation>
</message>
<message>
<source>Paste lamp</source>
<translation>Lampe einfügen</translation>
</message>
<message>
<source>Hung as read: {words}.</source>
<translation>Aufgehängt wie gelesen: {words}.</translation>
</message>
</context>
<context>
<name>planner.app.estimator</name>
<message>
<source>light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The light cannot be computed: {error}</source>
<translation>Das Licht lässt sich nicht berechnen: {error}</translation>
</message>
<message>
<source>The light</source>
<translation>Das Licht</translation>
</message>
<message>
<source>What comes beside the light ({topic})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mallopt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>malloc_trim</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.fields.choosers</name>
<message>
<source>{title}: {text}</source>
<translation>{title}: {text}</translation>
</message>
<message>
<source>lining</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>On all walls</source>
<translation>An allen Wänden</translation>
</message>
<message>
<source>   ({signed} mean, {signed2} minimum)</source>
<translation>   ({signed} Mittel, {signed2} Minimum)</translation>
</message>
<message>
<source>{signed} mean, {signed2} minimum</source>
<translation>{signed} Mittel, {signed2} Minimum</translation>
</message>
<message>
<source>diffuse</source>
<translation>diffus</translation>
</message>
<message>
<source>wrinkled mirror</source>
<translation>Knitterspiegel</translation>
</message>
<message>
<source>mirror</source>
<translation>Spiegel</translation>
</message>
<message>
<source>partly {mirror}</source>
<translation>teils {mirror}</translation>
</message>
<message>
<source>{format_number} {currency}</source>
<translation>{format_number} {currency}</translation>
</message>
<message>
<source> per m²</source>
<translation> je m²</translation>
</message>
<message>
<source>All walls</source>
<translation>Alle Wände</translation>
</message>
<message>
<source>{percent}  {name}</source>
<translation>{percent}  {name}</translation>
</message>
<message>
<source>Kind of lamp</source>
<translation>Art der Lampe</translation>
</message>
<message>
<source>Search by name, watts or body</source>
<translation>Nach Name, Watt oder Bauform suchen</translation>
</message>
<message>
<source>{name} (changed)</source>
<translation>{name} (geändert)</translation>
</message>
<message>
<source>{name}: {lamp_facts}</source>
<translation>{name}: {lamp_facts}</translation>
</message>
<message>
<source>cannot be dimmed</source>
<translation>nicht dimmbar</translation>
</message>
<message>
<source>{kind} {note}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{flux} from {watts}, {text}</source>
<translation>{flux} aus {watts}, {text}</translation>
</message>
</context>
<context>
<name>planner.app.fields.form</name>
<message>
<source>Longer than its line.</source>
<translation>Länger als die Zeile.</translation>
</message>
<message>
<source>▲ {sentence}</source>
<translation>▲ {sentence}</translation>
</message>
<message>
<source>What is this?</source>
<translation>Was ist das?</translation>
</message>
<message>
<source>What is this? {label}</source>
<translation>Was ist das? {label}</translation>
</message>
</context>
<context>
<name>planner.app.fields.lamp_fields</name>
<message>
<source>Half of its peak is left at {edge}; from there it fades smoothly to the side.</source>
<translation>Bei {edge} ist noch die Hälfte der Spitze übrig; von dort nimmt es zur Seite hin sanft ab.</translation>
</message>
<message>
<source>The beam is a table of {len} angles from {_deg} to {_deg2}, the same all around. Half of its peak is left at {_deg3}.</source>
<translation>Die Abstrahlung ist eine Tabelle von {len} Winkeln von {_deg} bis {_deg2}, rundum gleich. Bei {_deg3} ist noch die Hälfte der Spitze übrig.</translation>
</message>
<message>
<source>{_deg} to {_deg2}</source>
<translation>{_deg} bis {_deg2}</translation>
</message>
<message>
<source>The beam is a photometric table of {planes} plane{value} with {len} angles each, from {ends}.</source>
<translation>Die Abstrahlung ist eine photometrische Tabelle: {planes} Ebene{value} mit je {len} Winkeln, von {ends}.</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>{text} Half of its peak is left at {_deg}.</source>
<translation>{text} Bei {_deg} ist noch die Hälfte der Spitze übrig.</translation>
</message>
<message>
<source>{text} Half of its peak is left at {_deg} along the lamp and {_deg2} across it.</source>
<translation>{text} Die Hälfte der Spitze ist längs der Lampe bei {_deg} übrig, quer zu ihr bei {_deg2}.</translation>
</message>
<message>
<source>{format_number}°</source>
<translation>{format_number}°</translation>
</message>
<message>
<source>For display, for lux and for lamp files. What is chosen is kept for this kind of lamp in your settings.</source>
<translation>Für die Anzeige, für Lux und für Lampendateien. Was gewählt ist, wird für diese Lampenart in deinen Einstellungen behalten.</translation>
</message>
<message>
<source>For all lamps of this kind the plan then holds how much of their light is blue, green, red and far-red. Once that is known of every lamp, the figures tell of each on the canopy, and linings with a colour return each as they do.</source>
<translation>Für alle Lampen dieser Art enthält der Plan dann, wie viel ihres Lichts blau, grün, rot und fernrot ist. Ist das von jeder Lampe bekannt, sagen die Kennzahlen, wie viel davon auf dem Blätterdach ankommt, und farbige Auskleidungen werfen jede Farbe so zurück, wie sie es tun.</translation>
</message>
<message>
<source>No lining here has colours, so walls return all alike. None of the catalogue has: give one of your own its reflectance by colour.</source>
<translation>Keine Auskleidung hier hat Farben, also werfen die Wände alle gleich zurück. Auch im Katalog hat keine welche: einer eigenen den Reflexionsgrad nach Farbe geben.</translation>
</message>
<message>
<source>none chosen</source>
<translation>keines gewählt</translation>
</message>
<message>
<source>{inside} {percent}</source>
<translation>{inside} {percent}</translation>
</message>
<message>
<source>Spectrum</source>
<translation>Spektrum</translation>
</message>
<message>
<source>Count its colours</source>
<translation>Farben zählen</translation>
</message>
<message>
<source> A shape made by a formula, measured on no lamp.</source>
<translation> Eine Form aus einer Formel, an keiner Lampe gemessen.</translation>
</message>
<message>
<source>{figures_text}{model}</source>
<translation>{figures_text}{model}</translation>
</message>
<message>
<source>Of the photons of PPFD, {_colour_words}.</source>
<translation>Von den Photonen des PPFD: {_colour_words}.</translation>
</message>
<message>
<source>{said} {GREY_LININGS}</source>
<translation>{said} {GREY_LININGS}</translation>
</message>
<message>
<source>Small bulb or spot</source>
<translation>Kleine Birne oder Spot</translation>
</message>
<message>
<source>point</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Board or bar</source>
<translation>Paneel oder Leiste</translation>
</message>
<message>
<source>panel</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Bars</source>
<translation>Leisten</translation>
</message>
<message>
<source>bars</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>What kind it is</source>
<translation>Von welcher Art sie ist</translation>
</message>
<message>
<source>ppf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Can be dimmed</source>
<translation>Dimmbar</translation>
</message>
<message>
<source>Set lamp as dimmable</source>
<translation>Lampe als dimmbar setzen</translation>
</message>
<message>
<source>Set lamp as not dimmable</source>
<translation>Lampe als nicht dimmbar setzen</translation>
</message>
<message>
<source>Whether its output can be turned down. What is advised keeps to it.</source>
<translation>Ob sich ihre Leistung herunterregeln lässt. Ratschläge halten sich daran.</translation>
</message>
<message>
<source>hours-to-90</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>beam</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>May be off by</source>
<translation>Ungenau um</translation>
</message>
<message>
<source>Set doubt of the beam</source>
<translation>Ungenauigkeit des Abstrahlwinkels setzen</translation>
</message>
<message>
<source>By how many degrees the beam angle may be off, either way; 0 where it was measured. The ± of all figures counts it. What a kind of lamp states at first is usual, from memory.</source>
<translation>Um wie viel Grad der Abstrahlwinkel nach beiden Seiten falsch sein kann; 0, wo er gemessen wurde. Das ± aller Kennzahlen zählt es mit. Was eine Lampenart anfangs angibt, ist üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Shines from</source>
<translation>Leuchtet aus</translation>
</message>
<message>
<source>lamp-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Length</source>
<translation>Länge</translation>
</message>
<message>
<source>lamp-width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Width</source>
<translation>Breite</translation>
</message>
<message>
<source>bar-width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>housing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Save as own lamp …</source>
<translation>Als eigene Lampe speichern …</translation>
</message>
<message>
<source>Keeps this kind of lamp in your library, under a name.</source>
<translation>Behält diese Art von Lampe unter einem Namen in Ihrer Bibliothek.</translation>
</message>
<message>
<source>Name</source>
<translation>Name</translation>
</message>
<message>
<source>Save</source>
<translation>Speichern</translation>
</message>
<message>
<source>Keeps the lamp in your library.</source>
<translation>Behält die Lampe in Ihrer Bibliothek.</translation>
</message>
<message>
<source>Update own lamp</source>
<translation>Eigene Lampe ändern</translation>
</message>
<message>
<source>Writes these numbers into the entry of your library.</source>
<translation>Schreibt diese Zahlen in den Eintrag Ihrer Bibliothek.</translation>
</message>
<message>
<source>Delete own lamp</source>
<translation>Eigene Lampe löschen</translation>
</message>
<message>
<source>Takes the entry out of your library; plans that use it keep it.</source>
<translation>Nimmt den Eintrag aus Ihrer Bibliothek; Pläne, die ihn verwenden, behalten ihn.</translation>
</message>
<message>
<source>{name} (own)</source>
<translation>{name} (eigene)</translation>
</message>
<message>
<source>Leave out the lamp's colours</source>
<translation>Farben der Lampe weglassen</translation>
</message>
<message>
<source>Count the lamp's colours</source>
<translation>Farben der Lampe zählen</translation>
</message>
<message>
<source>Set lamp shape</source>
<translation>Form der Lampe setzen</translation>
</message>
<message>
<source>Own entry.</source>
<translation>Eigener Eintrag.</translation>
</message>
<message>
<source>Save as own lamp</source>
<translation>Als eigene Lampe speichern</translation>
</message>
<message>
<source>Kind of lamp</source>
<translation>Art der Lampe</translation>
</message>
<message>
<source>Name of this lamp</source>
<translation>Name dieser Lampe</translation>
</message>
<message>
<source>Name lamp</source>
<translation>Lampe benennen</translation>
</message>
<message>
<source>none; it goes by its number</source>
<translation>keiner; sie heißt nach ihrer Nummer</translation>
</message>
<message>
<source>Where it hangs</source>
<translation>Wo sie hängt</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-rotation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Rotation</source>
<translation>Drehung</translation>
</message>
<message>
<source>tilt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Tilt</source>
<translation>Neigung</translation>
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hours-run</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hours run</source>
<translation>Betriebsstunden</translation>
</message>
<message>
<source>dust</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Dust</source>
<translation>Staub</translation>
</message>
<message>
<source>One more</source>
<translation>Noch eine</translation>
</message>
<message>
<source>Hangs one more of this kind. Key: L</source>
<translation>Hängt noch eine dieser Art auf. Taste: L</translation>
</message>
<message>
<source>Duplicate</source>
<translation>Duplizieren</translation>
</message>
<message>
<source>Hangs a second one like this beside it.</source>
<translation>Hängt eine zweite wie diese daneben.</translation>
</message>
<message>
<source>Remove</source>
<translation>Entfernen</translation>
</message>
<message>
<source>Takes this lamp down.</source>
<translation>Nimmt diese Lampe ab.</translation>
</message>
<message>
<source>Choose lamp {name}</source>
<translation>Lampe wählen: {name}</translation>
</message>
<message>
<source>all of one kind</source>
<translation>alle von einer Art</translation>
</message>
<message>
<source>of {kinds} kinds, the first of them above</source>
<translation>von {kinds} Arten, oben die der ersten</translation>
</message>
<message>
<source>Together they give {text} from {text2}; {which}.</source>
<translation>Zusammen geben sie {text} aus {text2}; {which}.</translation>
</message>
<message>
<source>Gives {lamp_facts}.</source>
<translation>Gibt {lamp_facts}.</translation>
</message>
<message>
<source>, of which age and dust leave {percent},</source>
<translation>, wovon Alter und Staub {percent} lassen,</translation>
</message>
<message>
<source>At {output} it gives {text} from {text2}; new and at full output {lamp_facts}.</source>
<translation>Bei {output} gibt sie {text} aus {text2}; neu und bei voller Leistung {lamp_facts}.</translation>
</message>
</context>
<context>
<name>planner.app.fields.lining_details</name>
<message>
<source>Of the light that falls on the lining, the part that comes back, over 400-700 nm and all directions.</source>
<translation>Vom Licht, das auf die Auskleidung fällt, der Teil, der zurückkommt, über 400-700 nm und alle Richtungen.</translation>
</message>
<message>
<source>Of the light that comes back, the part that leaves as from a mirror. The rest is scattered evenly, as from matt paint.</source>
<translation>Vom zurückkommenden Licht der Teil, der wie von einem Spiegel abgeht. Der Rest wird gleichmäßig gestreut, wie von matter Farbe.</translation>
</message>
<message>
<source>Reflectance in this part of the spectrum, where you know it: blue 400-500 nm, green 500-600, red 600-700, far-red 700-750. Only their proportions count, and only for lamps whose colours the plan counts. No lining of the catalogue has colours: type your own, or leave all empty for one without.</source>
<translation>Reflexionsgrad in diesem Teil des Spektrums, wenn du ihn kennst: blau 400-500 nm, grün 500-600, rot 600-700, fernrot 700-750. Es zählen nur die Verhältnisse, und nur für Lampen, deren Farben der Plan zählt. Keine Auskleidung des Katalogs hat Farben: eigene eintippen, oder für eine ohne Farbe alles leer lassen.</translation>
</message>
<message>
<source>as all</source>
<translation>wie alle</translation>
</message>
<message>
<source>How far creases spread the mirror-like part: 0 is a flat mirror, 0.25 a creased film, 1 hardly a mirror any more. It takes no light away, and counts only where there is a mirror share.</source>
<translation>Wie weit Knitter den spiegelnden Teil streuen: 0 ist ein glatter Spiegel, 0,25 eine geknitterte Folie, 1 kaum noch ein Spiegel. Licht nehmen sie keines, und sie zählen nur, wo es einen Spiegelanteil gibt.</translation>
</message>
<message>
<source>Where the numbers come from</source>
<translation>Woher die Zahlen kommen</translation>
</message>
<message>
<source>Edit a copy …</source>
<translation>Kopie bearbeiten …</translation>
</message>
<message>
<source>Makes a lining of your own from this one, kept in your library.</source>
<translation>Macht aus dieser eine eigene Auskleidung in Ihrer Bibliothek.</translation>
</message>
<message>
<source>Edit own lining …</source>
<translation>Eigene bearbeiten …</translation>
</message>
<message>
<source>Changes its numbers in your library and in this plan.</source>
<translation>Ändert ihre Zahlen in Ihrer Bibliothek und in diesem Plan.</translation>
</message>
<message>
<source>Delete</source>
<translation>Löschen</translation>
</message>
<message>
<source>Takes it out of your library; plans that use it keep their copy.</source>
<translation>Nimmt sie aus Ihrer Bibliothek; Pläne, die sie verwenden, behalten ihre Kopie.</translation>
</message>
<message>
<source>Name</source>
<translation>Name</translation>
</message>
<message>
<source>Reflectance</source>
<translation>Reflexionsgrad</translation>
</message>
<message>
<source>Mirror share</source>
<translation>Spiegelanteil</translation>
</message>
<message>
<source>Wrinkle</source>
<translation>Knitter</translation>
</message>
<message>
<source>{accessibleName} of the lining</source>
<translation>{accessibleName} der Auskleidung</translation>
</message>
<message>
<source>Reflectance by colour</source>
<translation>Reflexionsgrad nach Farbe</translation>
</message>
<message>
<source>Save and use</source>
<translation>Speichern und verwenden</translation>
</message>
<message>
<source>Keeps the lining in your library and uses it.</source>
<translation>Behält die Auskleidung in Ihrer Bibliothek und verwendet sie.</translation>
</message>
<message>
<source>▲ {text}</source>
<translation>▲ {text}</translation>
</message>
<message>
<source>Source: {source}</source>
<translation>Quelle: {source}</translation>
</message>
<message>
<source>{name} (own)</source>
<translation>{name} (eigene)</translation>
</message>
<message>
<source>Save changes</source>
<translation>Änderungen speichern</translation>
</message>
<message>
<source>Own entry, started from '{name}'.</source>
<translation>Eigener Eintrag, ausgehend von „{name}“.</translation>
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>specular_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wrinkle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wavebands</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Returns {percent} of the light ({percent2} to {percent3}), {percent4} of that as from a mirror</source>
<translation>Wirft {percent} des Lichts zurück ({percent2} bis {percent3}), davon {percent4} wie ein Spiegel</translation>
</message>
<message>
<source> ({_by_colour})</source>
<translation> ({_by_colour})</translation>
</message>
<message>
<source>{text}.</source>
<translation>{text}.</translation>
</message>
<message>
<source>{text}, flat and sharp.</source>
<translation>{text}, glatt und scharf.</translation>
</message>
<message>
<source>slightly wavy</source>
<translation>leicht gewellt</translation>
</message>
<message>
<source>creased</source>
<translation>geknittert</translation>
</message>
<message>
<source>{text}, {creased} (wrinkle {wrinkle}).</source>
<translation>{text}, {creased} (Knitter {wrinkle}).</translation>
</message>
<message>
<source>{inside} {percent}</source>
<translation>{inside} {percent}</translation>
</message>
</context>
<context>
<name>planner.app.fields.panel</name>
<message>
<source>{lead} {text}</source>
<translation>{lead} {text}</translation>
</message>
<message>
<source>{said} {moved_besides}</source>
<translation>{said} {moved_besides}</translation>
</message>
<message>
<source>Change lining {name}</source>
<translation>Auskleidung ändern: {name}</translation>
</message>
<message>
<source>joined/{id}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{step_name}/{id}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{count} lamps</source>
<translation>{count} Lampen</translation>
</message>
<message>
<source>{count} obstacles</source>
<translation>{count} Hindernisse</translation>
</message>
<message>
<source>{what} are selected. What is set here is set for all of them.</source>
<translation>{what} sind gewählt. Was hier eingestellt wird, gilt für alle.</translation>
</message>
<message>
<source>-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.fields.search_list</name>
<message>
<source>{title} {facts} {words}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{title}. {facts}</source>
<translation>{title}. {facts}</translation>
</message>
<message>
<source>Search by name, finish or caution</source>
<translation>Nach Name, Oberfläche oder Warnhinweis suchen</translation>
</message>
<message>
<source>Search</source>
<translation>Suchen</translation>
</message>
<message>
<source>What is offered</source>
<translation>Was angeboten wird</translation>
</message>
<message>
<source>Nothing of that name is offered.</source>
<translation>Nichts mit diesem Namen im Angebot.</translation>
</message>
</context>
<context>
<name>planner.app.fields.space_fields</name>
<message>
<source>Corner</source>
<translation>Ecke</translation>
</message>
<message>
<source>x</source>
<translation>x</translation>
</message>
<message>
<source>y</source>
<translation>y</translation>
</message>
<message>
<source>Wall</source>
<translation>Wand</translation>
</message>
<message>
<source>length</source>
<translation>Länge</translation>
</message>
<message>
<source>Add a corner on the wall after corner {value}</source>
<translation>Eine Ecke an der Wand nach Ecke {value} hinzufügen</translation>
</message>
<message>
<source>Remove corner {value}</source>
<translation>Ecke {value} entfernen</translation>
</message>
<message>
<source>Add corner</source>
<translation>Ecke hinzufügen</translation>
</message>
<message>
<source>Remove corner</source>
<translation>Ecke entfernen</translation>
</message>
<message>
<source>Corner {value}, {value2}</source>
<translation>Ecke {value}, {value2}</translation>
</message>
<message>
<source>xy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Move corner {value}</source>
<translation>Ecke {value} verschieben</translation>
</message>
<message>
<source>corner-{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Length of wall {value}</source>
<translation>Länge von Wand {value}</translation>
</message>
<message>
<source>Set length of wall {value}</source>
<translation>Länge von Wand {value} setzen</translation>
</message>
<message>
<source>wall-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lining …</source>
<translation>Auskleidung …</translation>
</message>
<message>
<source>Show the lining of wall {value}</source>
<translation>Die Auskleidung von Wand {value} zeigen</translation>
</message>
<message>
<source>Rectangle</source>
<translation>Rechteck</translation>
</message>
<message>
<source>The whole of the present width and depth.</source>
<translation>Die ganze gegenwärtige Breite und Tiefe.</translation>
</message>
<message>
<source>L-shape</source>
<translation>L-Form</translation>
</message>
<message>
<source>Width and depth without their upper right quarter.</source>
<translation>Breite und Tiefe ohne ihr rechtes oberes Viertel.</translation>
</message>
<message>
<source>Cut corner</source>
<translation>Ecke ab</translation>
</message>
<message>
<source>Cuts the upper right corner off the outline as it is.</source>
<translation>Schneidet die rechte obere Ecke vom jetzigen Umriss ab.</translation>
</message>
<message>
<source>Name</source>
<translation>Name</translation>
</message>
<message>
<source>Rename plan</source>
<translation>Plan umbenennen</translation>
</message>
<message>
<source>width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Width</source>
<translation>Breite</translation>
</message>
<message>
<source>depth</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Depth</source>
<translation>Tiefe</translation>
</message>
<message>
<source>space-height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Height</source>
<translation>Höhe</translation>
</message>
<message>
<source>Shape footprint: {text}</source>
<translation>Grundriss formen: {text}</translation>
</message>
<message>
<source>Door</source>
<translation>Tür</translation>
</message>
<message>
<source>Opens at</source>
<translation>Öffnet sich an</translation>
</message>
<message>
<source>The wall that opens. While it stands open, light that reaches it leaves the space, whatever lining it carries.</source>
<translation>Die Wand, die sich öffnet. Solange sie offen steht, verlässt dort auftreffendes Licht den Raum, welche Auskleidung sie auch trägt.</translation>
</message>
<message>
<source>Door stands open</source>
<translation>Tür steht offen</translation>
</message>
<message>
<source>Open door</source>
<translation>Tür öffnen</translation>
</message>
<message>
<source>Close door</source>
<translation>Tür schließen</translation>
</message>
<message>
<source>room-light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room-hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>What stands in the light</source>
<translation>Was im Licht steht</translation>
</message>
<message>
<source>Puts a {inside} into the middle of the space.</source>
<translation>Stellt in die Mitte des Raums: {inside}.</translation>
</message>
<message>
<source>Add {inside}</source>
<translation>{inside} hinzufügen</translation>
</message>
<message>
<source>Corners and walls in numbers</source>
<translation>Ecken und Wände in Zahlen</translation>
</message>
<message>
<source>No door</source>
<translation>Keine Tür</translation>
</message>
<message>
<source>Wall {value}</source>
<translation>Wand {value}</translation>
</message>
<message>
<source>Remove door</source>
<translation>Tür entfernen</translation>
</message>
<message>
<source>Put door on wall {value}</source>
<translation>Tür an Wand {value} setzen</translation>
</message>
<message>
<source>What all its faces return. 'Open' stands for black here: all light that hits it is lost.</source>
<translation>Was alle seine Flächen zurückwerfen. „Offen“ heißt hier Schwarz: Alles Licht, das darauf fällt, ist verloren.</translation>
</message>
<message>
<source>Plants fill its top: a tray, a shelf or a pot. The drawing shows the light on them, and the figures tell of each canopy and of all.</source>
<translation>Pflanzen füllen seine Oberseite: eine Schale, ein Brett oder ein Topf. Die Zeichnung zeigt das Licht auf ihnen, und die Kennzahlen nennen jedes Blätterdach und alle zusammen.</translation>
</message>
<message>
<source>Map, figures, options, searches and schedule speak of this canopy and of its target, no more of the plan's own.</source>
<translation>Karte, Kennzahlen, Varianten, Suchen und Ablaufplan sprechen von diesem Blätterdach und seinem Ziel, nicht mehr vom eigenen des Plans.</translation>
</message>
<message>
<source>Reflects as leaves do</source>
<translation>Reflektiert wie Blätter</translation>
</message>
<message>
<source>Give leaves their colours</source>
<translation>Blättern ihre Farben geben</translation>
</message>
<message>
<source>Take leaves as grey</source>
<translation>Blätter als grau nehmen</translation>
</message>
<message>
<source>Leaves return more green than blue and red, and most of the far-red. How much of each is typical, from memory; together it is the reflectance above, over 400-700 nm. Without this all colours are returned alike.</source>
<translation>Blätter geben mehr Grün zurück als Blau und Rot, und vom Fernrot das meiste. Wie viel von jedem, ist typisch, aus der Erinnerung; zusammen ist es der Reflexionsgrad darüber, über 400-700 nm. Ohne dies werden alle Farben gleich zurückgegeben.</translation>
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Name obstacle</source>
<translation>Hindernis benennen</translation>
</message>
<message>
<source>Where it stands</source>
<translation>Wo es steht</translation>
</message>
<message>
<source>obstacle-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>underside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-rotation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Rotation</source>
<translation>Drehung</translation>
</message>
<message>
<source>How large it is</source>
<translation>Wie groß es ist</translation>
</message>
<message>
<source>obstacle-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Length</source>
<translation>Länge</translation>
</message>
<message>
<source>obstacle-width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>thickness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>It lies wholly below the closed canopy, where no light is: it has no effect.</source>
<translation>Es liegt ganz unter dem geschlossenen Blätterdach, wo kein Licht ist: Es wirkt sich nicht aus.</translation>
</message>
<message>
<source>Material</source>
<translation>Material</translation>
</message>
<message>
<source>Material of the obstacle</source>
<translation>Material des Hindernisses</translation>
</message>
<message>
<source>Remove obstacle</source>
<translation>Hindernis entfernen</translation>
</message>
<message>
<source>Takes it out of the space.</source>
<translation>Nimmt es aus dem Raum.</translation>
</message>
<message>
<source>About this material</source>
<translation>Zu diesem Material</translation>
</message>
<message>
<source>The plan has no target yet.</source>
<translation>Der Plan hat noch kein Ziel.</translation>
</message>
<message>
<source>{ppfd} to {ppfd2}</source>
<translation>{ppfd} bis {ppfd2}</translation>
</message>
<message>
<source>Wanted on it, as in the plan: {ends}.</source>
<translation>Gewünscht ist darauf, wie im Plan: {ends}.</translation>
</message>
<message>
<source>What grows on it</source>
<translation>Was darauf wächst</translation>
</message>
<message>
<source>Carries a canopy</source>
<translation>Trägt Pflanzen</translation>
</message>
<message>
<source>Put canopy on it</source>
<translation>Blätterdach daraufsetzen</translation>
</message>
<message>
<source>Take canopy off it</source>
<translation>Blätterdach herunternehmen</translation>
</message>
<message>
<source>leaves</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Reflectance of leaves</source>
<translation>Reflexionsgrad der Blätter</translation>
</message>
<message>
<source>Target of its own</source>
<translation>Eigenes Ziel</translation>
</message>
<message>
<source>Give canopy its own target</source>
<translation>Dem Blätterdach ein eigenes Ziel geben</translation>
</message>
<message>
<source>Let canopy follow the plan's target</source>
<translation>Blätterdach dem Ziel des Plans folgen lassen</translation>
</message>
<message>
<source>Without one it has the target of the plan.</source>
<translation>Ohne eines gilt das Ziel des Plans.</translation>
</message>
<message>
<source>own-low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>From</source>
<translation>Von</translation>
</message>
<message>
<source>own-high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>To</source>
<translation>Bis</translation>
</message>
<message>
<source>by this canopy</source>
<translation>nach diesem</translation>
</message>
<message>
<source>Judge the plan by this canopy</source>
<translation>Den Plan nach diesem Blätterdach beurteilen</translation>
</message>
<message>
<source>Judge the plan by its own canopy</source>
<translation>Den Plan nach seinem eigenen Blätterdach beurteilen</translation>
</message>
<message>
<source>Judge the plan</source>
<translation>Plan beurteilen</translation>
</message>
<message>
<source>{many} obstacles</source>
<translation>{many} Hindernisse</translation>
</message>
<message>
<source>Make {what} of {name}</source>
<translation>{what} aus {name} machen</translation>
</message>
</context>
<context>
<name>planner.app.fields.surface_fields</name>
<message>
<source>What this lining would bring</source>
<translation>Was diese Auskleidung brächte</translation>
</message>
<message>
<source>{name}: what it would bring is being computed …</source>
<translation>{name}: Was sie brächte, wird berechnet …</translation>
</message>
<message>
<source>{brought_sentence}.</source>
<translation>{brought_sentence}.</translation>
</message>
<message>
<source>Lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>Lining of the {word}</source>
<translation>Auskleidung: {word}</translation>
</message>
<message>
<source>Under a closed canopy the floor gets no light; its lining counts once the canopy is open.</source>
<translation>Unter einem geschlossenen Blätterdach bekommt der Boden kein Licht; seine Auskleidung zählt, sobald das Blätterdach offen ist.</translation>
</message>
<message>
<source>About this lining</source>
<translation>Zu dieser Auskleidung</translation>
</message>
<message>
<source>Line {word} with {name}</source>
<translation>{word} auskleiden mit {name}</translation>
</message>
<message>
<source>Band {value} from the floor up</source>
<translation>Streifen {value} vom Boden aus</translation>
</message>
<message>
<source>Select this band</source>
<translation>Diesen Streifen wählen</translation>
</message>
<message>
<source>Lining of band {value}, from the floor up</source>
<translation>Auskleidung von Streifen {value}, vom Boden aus</translation>
</message>
<message>
<source>up to</source>
<translation>bis</translation>
</message>
<message>
<source>Upper edge of band {value}</source>
<translation>Oberkante von Streifen {value}</translation>
</message>
<message>
<source>the ceiling</source>
<translation>zur Decke</translation>
</message>
<message>
<source>wall-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Length</source>
<translation>Länge</translation>
</message>
<message>
<source>This wall is the door and stands open: light leaves here.</source>
<translation>Diese Wand ist die Tür und steht offen: Hier geht Licht hinaus.</translation>
</message>
<message>
<source>Lining, from the floor up</source>
<translation>Auskleidung, vom Boden aus</translation>
</message>
<message>
<source>dirt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Dirt on this band</source>
<translation>Schmutz auf diesem Streifen</translation>
</message>
<message>
<source>Split band</source>
<translation>Streifen teilen</translation>
</message>
<message>
<source>Divides the selected band at half its height.</source>
<translation>Teilt den gewählten Streifen auf halber Höhe.</translation>
</message>
<message>
<source>Merge up</source>
<translation>Nach oben verbinden</translation>
</message>
<message>
<source>Takes away the edge above the selected band; its lining runs on upwards.</source>
<translation>Nimmt die Kante über dem gewählten Streifen weg; seine Auskleidung läuft nach oben weiter.</translation>
</message>
<message>
<source>Use on all walls</source>
<translation>An allen Wänden verwenden</translation>
</message>
<message>
<source>Gives every wall the bands and linings of this one.</source>
<translation>Gibt jeder Wand die Streifen und Auskleidungen dieser Wand.</translation>
</message>
<message>
<source>Its light on the map</source>
<translation>Ihr Licht auf der Karte</translation>
</message>
<message>
<source>Shows how much of the light at each place met this wall on its way, as long as the wall is selected. Resting the pointer on a wall shows it too.</source>
<translation>Zeigt, solange die Wand gewählt ist, wie viel des Lichts an jeder Stelle unterwegs auf diese Wand traf. Auch das Ruhen des Zeigers auf einer Wand zeigt es.</translation>
</message>
<message>
<source>band-edge</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Line all walls with {name}</source>
<translation>Alle Wände auskleiden mit {name}</translation>
</message>
<message>
<source>Line wall {value} with {name}</source>
<translation>Wand {value} auskleiden mit {name}</translation>
</message>
<message>
<source>Merge bands</source>
<translation>Streifen verbinden</translation>
</message>
<message>
<source>Line all walls alike</source>
<translation>Alle Wände gleich auskleiden</translation>
</message>
</context>
<context>
<name>planner.app.fields.two_readings</name>
<message>
<source>Test of two readings …</source>
<translation>Probe mit zwei Messwerten …</translation>
</message>
<message>
<source>Tells the beam angle from two readings under this lamp.</source>
<translation>Sagt den Abstrahlwinkel aus zwei Messwerten unter dieser Lampe.</translation>
</message>
<message>
<source>In the dark, only this lamp burning, no wall near it that is not matt black: one reading straight under its middle, one as far aside as it hangs above the sensor, across its longer side, the sensor level. Do not look into the lamp.</source>
<translation>Im Dunkeln, nur diese Lampe brennt, keine Wand in der Nähe, die nicht mattschwarz ist: ein Messwert senkrecht unter ihrer Mitte, einer so weit daneben, wie sie über dem Sensor hängt, quer zu ihrer längeren Seite, der Sensor waagrecht. Nicht in die Lampe schauen.</translation>
</message>
<message>
<source>Lamp above sensor</source>
<translation>Lampenhöhe</translation>
</message>
<message>
<source>So far aside is the second reading.</source>
<translation>So weit daneben liegt der zweite Messwert.</translation>
</message>
<message>
<source>Read under it</source>
<translation>Darunter</translation>
</message>
<message>
<source>In any unit of your meter, both in the same.</source>
<translation>In einer beliebigen Einheit des Messgeräts, beide in derselben.</translation>
</message>
<message>
<source>Read aside</source>
<translation>Daneben</translation>
</message>
<message>
<source>Use this beam</source>
<translation>Diesen Winkel nehmen</translation>
</message>
<message>
<source>Sets the beam angle and its doubt.</source>
<translation>Setzt den Abstrahlwinkel und seine Ungenauigkeit.</translation>
</message>
<message>
<source>beam</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set beam by two readings</source>
<translation>Abstrahlwinkel aus zwei Messwerten setzen</translation>
</message>
</context>
<context>
<name>planner.app.frame</name>
<message>
<source>Not known of this light: the colours of every lamp must be counted. Choose a spectrum in the fields of each lamp, then 'Count its colours'.</source>
<translation>Von diesem Licht nicht bekannt: Die Farben jeder Lampe müssen gezählt werden. In den Feldern jeder Lampe ein Spektrum wählen, dann 'Farben zählen'.</translation>
</message>
<message>
<source>map_{name}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cells_{count}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shows_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>theme_{choice}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>unit_cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>unit_in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>theme_{theme}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>map_{colour_map}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shows_{shows}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Centimetres</source>
<translation>Zentimeter</translation>
</message>
<message>
<source>Inches</source>
<translation>Zoll</translation>
</message>
<message>
<source>As the system</source>
<translation>Wie das System</translation>
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
<source>Settings</source>
<translation>Einstellungen</translation>
</message>
<message>
<source>Lengths in</source>
<translation>Längen in</translation>
</message>
<message>
<source>Colour map</source>
<translation>Farbkarte</translation>
</message>
<message>
<source>Map cells</source>
<translation>Kartenzellen</translation>
</message>
<message>
<source>{count} x {count}</source>
<translation>{count} × {count}</translation>
</message>
<message>
<source>Theme</source>
<translation>Design</translation>
</message>
<message>
<source>Language</source>
<translation>Sprache</translation>
</message>
<message>
<source>The language changes when the program is started again.</source>
<translation>Die Sprache wechselt beim nächsten Start des Programms.</translation>
</message>
<message>
<source>Contour lines</source>
<translation>Konturlinien</translation>
</message>
<message>
<source>Mark the target band</source>
<translation>Zielbereich markieren</translation>
</message>
<message>
<source>Tell on the desktop when long work is done</source>
<translation>Auf dem Schreibtisch melden, wenn lange Arbeit fertig ist</translation>
</message>
<message>
<source>unit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>colour_map</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cells</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>contours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>band_wash</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>History</source>
<translation>Verlauf</translation>
</message>
<message>
<source>As opened</source>
<translation>Wie geöffnet</translation>
</message>
<message>
<source>Steps made so far</source>
<translation>Bisherige Schritte</translation>
</message>
<message>
<source>Click a step to go to where it had just been made.</source>
<translation>Ein Klick auf einen Schritt führt dorthin, wo er eben getan war.</translation>
</message>
<message>
<source>Pages</source>
<translation>Seiten</translation>
</message>
<message>
<source>Light as sketched</source>
<translation>Licht wie skizziert</translation>
</message>
<message>
<source>Light as sketched, computed most finely</source>
<translation>Licht wie skizziert, am feinsten berechnet</translation>
</message>
<message>
<source>State of the estimate</source>
<translation>Stand der Schätzung</translation>
</message>
<message>
<source>Computed in {seconds} s.</source>
<translation>In {seconds} s berechnet.</translation>
</message>
<message>
<source> {_fraction}</source>
<translation> {_fraction}</translation>
</message>
<message>
<source>Not computed - see the message</source>
<translation>Nicht berechnet - siehe Meldung</translation>
</message>
<message>
<source>Computing the light…{done}</source>
<translation>Licht wird berechnet…{done}</translation>
</message>
<message>
<source>Preview - refining…{done}</source>
<translation>Vorschau - wird feiner…{done}</translation>
</message>
<message>
<source>Last light - working…{done}</source>
<translation>Voriges Licht - rechnet…{done}</translation>
</message>
</context>
<context>
<name>planner.app.help</name>
<message>
<source>Grow space light planner</source>
<translation>Lichtplaner für Anzuchträume</translation>
</message>
<message>
<source>Plans (*.plan.json *.json);;All files (*)</source>
<translation>Pläne (*.plan.json *.json);;Alle Dateien (*)</translation>
</message>
<message>
<source>news</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>docs/changelog.md</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name}.md</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>utf-8</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>This page cannot be shown: {error}</source>
<translation>Diese Seite lässt sich nicht zeigen: {error}</translation>
</message>
<message>
<source>icons/planner.svg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>This is version {__version__}: what is new</source>
<translation>Das ist Version {__version__}: was ist neu</translation>
</message>
<message>
<source>numpy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>pydantic</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>pyqtgraph</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>contourpy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{APP_TITLE} {__version__}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Python {python_version} ({platform}, {machine})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Qt {qVersion}, PySide6 {__version__}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{package} {version}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{package} not installed</source>
<translation>{package} nicht installiert</translation>
</message>
<message>
<source>Screen {width} x {height} at {devicePixelRatio}, drawn by '{drawn_by}'</source>
<translation>Bildschirm {width} x {height} bei {devicePixelRatio}, gezeichnet von „{drawn_by}“</translation>
</message>
<message>
<source>About {APP_TITLE}</source>
<translation>Über: {APP_TITLE}</translation>
</message>
<message>
<source>Draws a small grow space to scale, lines its walls, hangs its lamps and estimates the light on the canopy.

Free under the MIT licence; held by the contributors. Qt for Python is used under the LGPL, version 3.</source>
<translation>Zeichnet einen kleinen Anzuchtraum im Maßstab, kleidet seine Wände aus, hängt seine Lampen auf und schätzt das Licht auf dem Blätterdach.

Frei unter der MIT-Lizenz; die Rechte liegen bei den Mitwirkenden. Qt for Python wird unter der LGPL, Version 3, verwendet.</translation>
</message>
<message>
<source>Versions</source>
<translation>Versionen</translation>
</message>
<message>
<source>Copy details</source>
<translation>Angaben kopieren</translation>
</message>
<message>
<source>start</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>How to start</source>
<translation>Erste Schritte</translation>
</message>
<message>
<source>guide</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A worked example</source>
<translation>Durchgeführtes Beispiel</translation>
</message>
<message>
<source>cautions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Cautions</source>
<translation>Warnhinweise</translation>
</message>
<message>
<source>glossary</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Glossary</source>
<translation>Glossar</translation>
</message>
<message>
<source>lamp-files</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lamps from files</source>
<translation>Lampen aus Dateien</translation>
</message>
<message>
<source>spectra</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Spectra</source>
<translation>Spektren</translation>
</message>
<message>
<source>What is new</source>
<translation>Was ist neu</translation>
</message>
<message>
<source>{resource_path}/</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Help</source>
<translation>Hilfe</translation>
</message>
<message>
<source>Help pages</source>
<translation>Hilfeseiten</translation>
</message>
<message>
<source>help/</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>**{_escaped}.** {_escaped2}</source>
<translation>**{_escaped}.** {_escaped2}</translation>
</message>
<message>
<source>

## In this plan</source>
<translation>

## In diesem Plan</translation>
</message>
<message>
<source>{rstrip}{here}{mark}{rest_of_page}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.md</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.jobs</name>
<message>
<source>lane-</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>PLANNER_SYNCHRONOUS</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>This</source>
<translation>Dies</translation>
</message>
<message>
<source>Stopped.</source>
<translation>Angehalten.</translation>
</message>
<message>
<source>{__name__}: {said}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{what} could not be computed because of a fault in the program ({fault}).</source>
<translation>{what}: Wegen eines Fehlers im Programm nicht berechenbar ({fault}).</translation>
</message>
</context>
<context>
<name>planner.app.lamp_files</name>
<message>
<source>A lamp file tells how the light is spread, not how many photons there are. Type the photon flux the maker prints, or compute it from the lumens with a spectrum.</source>
<translation>Eine Lampendatei sagt, wie sich das Licht verteilt, nicht, wie viele Photonen es sind. Den vom Hersteller genannten Photonenfluss eingeben oder ihn mit einem Spektrum aus den Lumen berechnen.</translation>
</message>
<message>
<source>as in the file</source>
<translation>wie in der Datei</translation>
</message>
<message>
<source>by 90°</source>
<translation>um 90°</translation>
</message>
<message>
<source>by 180°</source>
<translation>um 180°</translation>
</message>
<message>
<source>by 270°</source>
<translation>um 270°</translation>
</message>
<message>
<source>from-file</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lamp from {name}</source>
<translation>Lampe aus {name}</translation>
</message>
<message>
<source>What is doubtful in the file</source>
<translation>Was an der Datei zweifelhaft ist</translation>
</message>
<message>
<source>Set {number}</source>
<translation>Satz {number}</translation>
</message>
<message>
<source>Aim its beam straight down</source>
<translation>Abstrahlung gerade nach unten richten</translation>
</message>
<message>
<source>Photon flux (PPF)</source>
<translation>Photonenfluss (PPF)</translation>
</message>
<message>
<source>From its lumens with</source>
<translation>Aus ihren Lumen mit</translation>
</message>
<message>
<source>Photon flux</source>
<translation>Photonenfluss</translation>
</message>
<message>
<source>Spectrum from file…</source>
<translation>Spektrum aus Datei…</translation>
</message>
<message>
<source>A CSV table of wavelength and value.</source>
<translation>Eine CSV-Tabelle aus Wellenlänge und Wert.</translation>
</message>
<message>
<source>Watts</source>
<translation>Watt</translation>
</message>
<message>
<source>Keep it among my own lamps, too</source>
<translation>Auch unter meinen eigenen Lampen behalten</translation>
</message>
<message>
<source>Name</source>
<translation>Name</translation>
</message>
<message>
<source>Lamp set</source>
<translation>Lampensatz</translation>
</message>
<message>
<source>Turn the light</source>
<translation>Licht drehen</translation>
</message>
<message>
<source>Spectrum</source>
<translation>Spektrum</translation>
</message>
<message>
<source>Type the photon flux</source>
<translation>Den Photonenfluss eingeben</translation>
</message>
<message>
<source>Compute the photon flux from the lumens with a spectrum</source>
<translation>Den Photonenfluss mit einem Spektrum aus den Lumen berechnen</translation>
</message>
<message>
<source>Hang lamp</source>
<translation>Lampe aufhängen</translation>
</message>
<message>
<source>△ {warning}</source>
<translation>△ {warning}</translation>
</message>
<message>
<source>The beam of this file is too narrow to be aimed down.</source>
<translation>Die Abstrahlung dieser Datei ist zu schmal, um sie nach unten zu richten.</translation>
</message>
<message>
<source>{lumens} lm of this spectrum are {text}.</source>
<translation>{lumens} lm dieses Spektrums sind {text}.</translation>
</message>
<message>
<source>Lamp file {name}, {source_format}</source>
<translation>Lampendatei {name}, {source_format}</translation>
</message>
<message>
<source>Lamp files (*.ies *.ldt *.IES *.LDT);;All files (*)</source>
<translation>Lampendateien (*.ies *.ldt *.IES *.LDT);;Alle Dateien (*)</translation>
</message>
<message>
<source>Tables (*.csv *.txt *.tsv);;All files (*)</source>
<translation>Tabellen (*.csv *.txt *.tsv);;Alle Dateien (*)</translation>
</message>
<message>
<source>LM-63 lamp files (*.ies);;All files (*)</source>
<translation>LM-63-Lampendateien (*.ies);;Alle Dateien (*)</translation>
</message>
<message>
<source>Add lamp from file</source>
<translation>Lampe aus Datei</translation>
</message>
<message>
<source>'{name}', {text}</source>
<translation>„{name}“, {text}</translation>
</message>
<message>
<source>This lamp file cannot be used</source>
<translation>Diese Lampendatei ist nicht verwendbar</translation>
</message>
<message>
<source>Spectrum from file</source>
<translation>Spektrum aus Datei</translation>
</message>
<message>
<source>key</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The lamp was not kept</source>
<translation>Die Lampe wurde nicht behalten</translation>
</message>
<message>
<source>{value}.ies</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>Lamp as LM-63</source>
<translation>Lampe als LM-63</translation>
</message>
<message>
<source>scaled to 1000 lm</source>
<translation>auf 1000 lm skaliert</translation>
</message>
<message>
<source>lumens by '{name}'</source>
<translation>Lumen nach „{name}“</translation>
</message>
<message>
<source>Wrote {name}, {light}</source>
<translation>{name} geschrieben, {light}</translation>
</message>
</context>
<context>
<name>planner.app.main_window</name>
<message>
<source>The light is still being computed; export it in a moment.</source>
<translation>Das Licht wird noch berechnet; gleich noch einmal exportieren.</translation>
</message>
<message>
<source>csv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.csv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>picture</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.png</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sketch</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>new</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>save</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>save_as</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp_from_file</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>export_lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>export_drawing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>copy_map</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>report</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>new_window</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>close</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>quit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>keep_variant</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>settings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>zoom_in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>zoom_out</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>measure</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>large_side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>history</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>full_screen</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tour</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>data_folder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>An empty plan</source>
<translation>Ein leerer Plan</translation>
</message>
<message>
<source>example_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>An example; all of it is invented</source>
<translation>Ein Beispiel; alles erfunden</translation>
</message>
<message>
<source>export_{k}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>page_{k}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>help_{page}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Menus</source>
<translation>Menüs</translation>
</message>
<message>
<source>Sketch</source>
<translation>Skizze</translation>
</message>
<message>
<source>Side by side</source>
<translation>Nebeneinander</translation>
</message>
<message>
<source>Survey</source>
<translation>Messung</translation>
</message>
<message>
<source>Your own space</source>
<translation>Ihr eigener Raum</translation>
</message>
<message>
<source>cautions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>duplicate</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>copy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cut</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>remove</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>align_{edge}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shares_across</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shares_deep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gaps_across</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gaps_deep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>paste</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>select_lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>page_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name}[*] - {APP_TITLE}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value}{ending}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>plan</source>
<translation>Plan</translation>
</message>
<message>
<source>Export</source>
<translation>Export</translation>
</message>
<message>
<source>export</source>
<translation>Export</translation>
</message>
<message>
<source>{name} map</source>
<translation>{name} Karte</translation>
</message>
<message>
<source>The folder {folder} cannot be made: {reason_of}.</source>
<translation>Der Ordner {folder} lässt sich nicht anlegen: {reason_of}.</translation>
</message>
<message>
<source>Your own lamps and linings are kept in {folder}</source>
<translation>Ihre eigenen Lampen und Auskleidungen liegen in {folder}</translation>
</message>
</context>
<context>
<name>planner.app.notices</name>
<message>
<source>done after {_time}.</source>
<translation>fertig nach {_time}.</translation>
</message>
<message>
<source>ended without an answer.</source>
<translation>ohne Antwort beendet.</translation>
</message>
<message>
<source>{what}: {how}</source>
<translation>{what}: {how}</translation>
</message>
<message>
<source>{rest} s</source>
<translation>{rest} s</translation>
</message>
<message>
<source>{minutes} min {rest} s</source>
<translation>{minutes} min {rest} s</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.comparer</name>
<message>
<source>comparer</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bills</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Measure against {name}</source>
<translation>Vergleichen mit {name}</translation>
</message>
<message>
<source>The comparison</source>
<translation>Der Vergleich</translation>
</message>
<message>
<source>'{name}' was the baseline and is gone; all are measured against '{name2}' now.</source>
<translation>„{name}“ war die Basis und ist weg; alle werden jetzt mit „{name2}“ verglichen.</translation>
</message>
<message>
<source>The odds</source>
<translation>Die Chancen</translation>
</message>
<message>
<source>What has to be bought</source>
<translation>Was zu kaufen ist</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.find_form</name>
<message>
<source>Height</source>
<translation>Höhe</translation>
</message>
<message>
<source>Output</source>
<translation>Dimmung</translation>
</message>
<message>
<source>Hours of light</source>
<translation>Beleuchtungsdauer</translation>
</message>
<message>
<source>Lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>Places of lamps</source>
<translation>Plätze der Lampen</translation>
</message>
<message>
<source>Number of lamps</source>
<translation>Zahl der Lampen</translation>
</message>
<message>
<source>of_base</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>payback</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Say at the right what you want most, what may be turned for it, and what it must keep to. The answers stand here: each can be used in the plan or kept as an option.</source>
<translation>Rechts angeben, was vor allem gewünscht ist, was dafür geändert werden darf und was einzuhalten ist. Die Antworten stehen dann hier: Jede lässt sich im Plan verwenden oder als Variante behalten.</translation>
</message>
<message>
<source>Answer</source>
<translation>Antwort</translation>
</message>
<message>
<source>The answers will be drawn here: evenness against what it takes.</source>
<translation>Hier werden die Antworten gezeichnet: Gleichmäßigkeit gegen das, was sie kostet.</translation>
</message>
<message>
<source>Answers</source>
<translation>Antworten</translation>
</message>
<message>
<source>The chosen answer</source>
<translation>Die gewählte Antwort</translation>
</message>
<message>
<source>Use in the plan</source>
<translation>Im Plan verwenden</translation>
</message>
<message>
<source>Make this the plan, as one undo step</source>
<translation>Dies zum Plan machen, als ein Schritt zum Rückgängigmachen</translation>
</message>
<message>
<source>Keep as an option</source>
<translation>Als Variante behalten</translation>
</message>
<message>
<source>The plan stays; this stands beside it</source>
<translation>Der Plan bleibt; dies steht daneben</translation>
</message>
<message>
<source>Use {name}</source>
<translation>Verwenden: {name}</translation>
</message>
<message>
<source>'{name}' is the plan now.</source>
<translation>„{name}“ ist jetzt der Plan.</translation>
</message>
<message>
<source>These answers are of '{name}' before it was changed.</source>
<translation>Diese Antworten gehören zu „{name}“ vor der Änderung.</translation>
</message>
<message>
<source>These answers are of the former question.</source>
<translation>Diese Antworten gehören zur vorigen Frage.</translation>
</message>
<message>
<source>total</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The best</source>
<translation>Die beste</translation>
</message>
<message>
<source>Three ways</source>
<translation>Drei Wege</translation>
</message>
<message>
<source>Find</source>
<translation>Suchen</translation>
</message>
<message>
<source>Wanted most</source>
<translation>Vor allem gewünscht</translation>
</message>
<message>
<source>May be turned</source>
<translation>Darf geändert werden</translation>
</message>
<message>
<source>Lamps, from</source>
<translation>Lampen, von</translation>
</message>
<message>
<source>to</source>
<translation>bis</translation>
</message>
<message>
<source>Mean light</source>
<translation>Mittleres Licht</translation>
</message>
<message>
<source>The PPFD wanted on the canopy.</source>
<translation>Die auf dem Blätterdach gewünschte PPFD.</translation>
</message>
<message>
<source>Linings to try</source>
<translation>Zu versuchende Auskleidungen</translation>
</message>
<message>
<source>They go onto</source>
<translation>Sie kommen an</translation>
</message>
<message>
<source>It must keep to</source>
<translation>Es muss einhalten</translation>
</message>
<message>
<source>Just enough</source>
<translation>Gerade genug</translation>
</message>
<message>
<source>The middle</source>
<translation>Die Mitte</translation>
</message>
<message>
<source>DLI of</source>
<translation>DLI von</translation>
</message>
<message>
<source>Aim at</source>
<translation>Anzielen</translation>
</message>
<message>
<source>tariff</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>span</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Search by estimates; it can be stopped at any time</source>
<translation>Sucht mit Schätzungen; lässt sich jederzeit anhalten</translation>
</message>
<message>
<source>The {_hung} lamps of the plan are tried as well.</source>
<translation>Auch die Lampenzahl des Plans ({_hung}) wird versucht.</translation>
</message>
<message>
<source>dli_low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli_high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Find three ways</source>
<translation>Drei Wege suchen</translation>
</message>
<message>
<source>The plan as it was.</source>
<translation>Der Plan, wie er war.</translation>
</message>
<message>
<source>{count} answer{value} that none of {tried} tried beats.</source>
<translation>{count} Antwort{value}, die von {tried} Versuchen keiner schlägt.</translation>
</message>
<message>
<source>s</source>
<translation>en</translation>
</message>
<message>
<source>None of {tried} tried keeps to all of it; the nearest is shown.</source>
<translation>Keiner von {tried} Versuchen hält alles ein; gezeigt ist der nächste.</translation>
</message>
<message>
<source>{sum} of 3 ways reach it.</source>
<translation>{sum} von 3 Wegen erreichen es.</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.linked</name>
<message>
<source>Stop</source>
<translation>Anhalten</translation>
</message>
<message>
<source>Stop computing</source>
<translation>Rechnung anhalten</translation>
</message>
<message>
<source>Progress: {ask}</source>
<translation>Fortschritt: {ask}</translation>
</message>
<message>
<source>Answer: {ask}</source>
<translation>Antwort: {ask}</translation>
</message>
<message>
<source>'{text}'</source>
<translation>„{text}“</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.map_card</name>
<message>
<source>application/x-planner-variant</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cividis</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Name of the option</source>
<translation>Name der Variante</translation>
</message>
<message>
<source>no light to show</source>
<translation>kein Licht zu zeigen</translation>
</message>
<message>
<source>{ppfd} to {ppfd2}</source>
<translation>{ppfd} bis {ppfd2}</translation>
</message>
<message>
<source>mean {ppfd} · min / mean {percent}</source>
<translation>Mittel {ppfd} · Min/Mittel {percent}</translation>
</message>
<message>
<source>{light} · DLI {number}</source>
<translation>{light} · DLI {number}</translation>
</message>
<message>
<source>{name}, {word}</source>
<translation>{name}, {word}</translation>
</message>
<message>
<source>the plan as it is on the sketch</source>
<translation>der Plan, wie er auf der Skizze ist</translation>
</message>
<message>
<source>just as the plan</source>
<translation>genau wie der Plan</translation>
</message>
<message>
<source>▲ {problem}</source>
<translation>▲ {problem}</translation>
</message>
<message>
<source>{signed_change} %</source>
<translation>{signed_change} %</translation>
</message>
<message>
<source>{sign}{ppfd}</source>
<translation>{sign}{ppfd}</translation>
</message>
<message>
<source>baseline</source>
<translation>Basis</translation>
</message>
<message>
<source>start</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>end</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.pages.side.map_sheet</name>
<message>
<source>sketch</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>adopt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>baseline</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>duplicate</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rename</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>earlier</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>later</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>remove</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Open on the sketch</source>
<translation>In der Skizze öffnen</translation>
</message>
<message>
<source>It stays in the list (double click)</source>
<translation>Bleibt in der Liste (Doppelklick)</translation>
</message>
<message>
<source>Adopt</source>
<translation>Übernehmen</translation>
</message>
<message>
<source>Make it the plan itself, out of the list (Enter)</source>
<translation>Zum Plan selbst machen, aus der Liste heraus (Eingabe)</translation>
</message>
<message>
<source>As baseline</source>
<translation>Als Basis</translation>
</message>
<message>
<source>Measure the others against it (B)</source>
<translation>Die anderen damit vergleichen (B)</translation>
</message>
<message>
<source>Duplicate</source>
<translation>Duplizieren</translation>
</message>
<message>
<source>One more just like it (Ctrl+D)</source>
<translation>Noch eine genau wie diese (Strg+D)</translation>
</message>
<message>
<source>Rename</source>
<translation>Umbenennen</translation>
</message>
<message>
<source>Earlier</source>
<translation>Früher</translation>
</message>
<message>
<source>Later</source>
<translation>Später</translation>
</message>
<message>
<source>Remove</source>
<translation>Entfernen</translation>
</message>
<message>
<source>Take it out (Delete)</source>
<translation>Herausnehmen (Entf)</translation>
</message>
<message>
<source>% more</source>
<translation>% mehr</translation>
</message>
<message>
<source>or less</source>
<translation>oder weniger</translation>
</message>
<message>
<source>Maps</source>
<translation>Karten</translation>
</message>
<message>
<source>{signed_change} %</source>
<translation>{signed_change} %</translation>
</message>
<message>
<source>= equal</source>
<translation>= gleich</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.options_table</name>
<message>
<source>What to buy</source>
<translation>Zu kaufen</translation>
</message>
<message>
<source>{name}
{removesuffix}</source>
<translation>{name}
{removesuffix}</translation>
</message>
<message>
<source>Options</source>
<translation>Varianten</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.page</name>
<message>
<source>options</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>odds</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cost</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>try</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sweep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>find</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>schedule</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>worth</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Options</source>
<translation>Varianten</translation>
</message>
<message>
<source>Odds</source>
<translation>Chancen</translation>
</message>
<message>
<source>Light and cost</source>
<translation>Licht und Kosten</translation>
</message>
<message>
<source>Try</source>
<translation>Versuchen</translation>
</message>
<message>
<source>Sweep</source>
<translation>Reihe</translation>
</message>
<message>
<source>Find</source>
<translation>Suche</translation>
</message>
<message>
<source>Schedule</source>
<translation>Zeitplan</translation>
</message>
<message>
<source>Worth it</source>
<translation>Lohnt es sich</translation>
</message>
<message>
<source>No lamp hangs in this space yet, so it is dark. Hang one on the sketch first.</source>
<translation>Noch hängt keine Lampe in diesem Raum, er ist also dunkel. Zuerst auf der Skizze eine aufhängen.</translation>
</message>
<message>
<source>finding how sure it is…</source>
<translation>Sicherheit wird ermittelt…</translation>
</message>
<message>
<source>Nothing stands beside the plan yet. Keep the plan as an option and go on sketching, or try other linings, lamps or heights.</source>
<translation>Noch steht nichts neben dem Plan. Den Plan als Variante behalten und weiterskizzieren oder andere Auskleidungen, Lampen oder Höhen versuchen.</translation>
</message>
<message>
<source>questions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>State of the comparison</source>
<translation>Stand des Vergleichs</translation>
</message>
<message>
<source>What figures are of</source>
<translation>Wovon die Zahlen sprechen</translation>
</message>
<message>
<source>To the sketch</source>
<translation>Zur Skizze</translation>
</message>
<message>
<source>Keep the plan as an option</source>
<translation>Den Plan als Variante behalten</translation>
</message>
<message>
<source>Try others</source>
<translation>Andere versuchen</translation>
</message>
<message>
<source>Copy the table</source>
<translation>Tabelle kopieren</translation>
</message>
<message>
<source>Tab-separated, for a spreadsheet (Ctrl+C in the table)</source>
<translation>Mit Tabulatoren, für eine Tabellenkalkulation (Strg+C in der Tabelle)</translation>
</message>
<message>
<source>Export as CSV…</source>
<translation>Als CSV exportieren…</translation>
</message>
<message>
<source>Questions</source>
<translation>Fragen</translation>
</message>
<message>
<source>{hidden} of {len} miss a wish</source>
<translation>{hidden} von {len} verfehlen einen Wunsch</translation>
</message>
<message>
<source>refining…</source>
<translation>wird feiner…</translation>
</message>
<message>
<source>computing…</source>
<translation>rechnet…</translation>
</message>
<message>
<source>{text} {contrary}</source>
<translation>{text} {contrary}</translation>
</message>
<message>
<source>Copied the table; paste it into a spreadsheet.</source>
<translation>Tabelle kopiert; in eine Tabellenkalkulation einfügen.</translation>
</message>
<message>
<source>{in_file_name} side by side.csv</source>
<translation>{in_file_name} nebeneinander.csv</translation>
</message>
<message>
<source>Export</source>
<translation>Export</translation>
</message>
<message>
<source>table</source>
<translation>Tabelle</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.schedule_board</name>
<message>
<source>weeks</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Stage</source>
<translation>Stadium</translation>
</message>
<message>
<source>Canopy</source>
<translation>Blätterdach</translation>
</message>
<message>
<source>From</source>
<translation>Von</translation>
</message>
<message>
<source>To</source>
<translation>Bis</translation>
</message>
<message>
<source>Hours</source>
<translation>Stunden</translation>
</message>
<message>
<source>Weeks</source>
<translation>Wochen</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cost</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>heed</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{WANTED}: {refusal}</source>
<translation>{WANTED}: {refusal}</translation>
</message>
<message>
<source>Change stage {name}</source>
<translation>Stadium ändern: {name}</translation>
</message>
<message>
<source>low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Growth schedule</source>
<translation>Zeitplan des Wachstums</translation>
</message>
<message>
<source>Own stage</source>
<translation>Eigenes Stadium</translation>
</message>
<message>
<source>Option</source>
<translation>Variante</translation>
</message>
<message>
<source>kWh</source>
<translation>kWh</translation>
</message>
<message>
<source>Cost</source>
<translation>Kosten</translation>
</message>
<message>
<source>Met</source>
<translation>Erreicht</translation>
</message>
<message>
<source>Wanted most</source>
<translation>Vor allem gewünscht</translation>
</message>
<message>
<source>In the target</source>
<translation>Im Ziel</translation>
</message>
<message>
<source>tariff</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Find for each stage</source>
<translation>Für jedes Stadium suchen</translation>
</message>
<message>
<source>Height, output and energy of every stage and option</source>
<translation>Höhe, Dimmung und Energie jedes Stadiums und jeder Variante</translation>
</message>
<message>
<source>Over the whole growth</source>
<translation>Über das ganze Wachstum</translation>
</message>
<message>
<source>Totals of the options</source>
<translation>Summen der Varianten</translation>
</message>
<message>
<source>Save the weekly sheet…</source>
<translation>Wochenblatt speichern…</translation>
</message>
<message>
<source>A PDF that says week by week what to raise, dim and time</source>
<translation>Ein PDF, das Woche für Woche sagt, was zu heben, zu dimmen und zu schalten ist</translation>
</message>
<message>
<source>{met} of {len}</source>
<translation>{met} von {len}</translation>
</message>
<message>
<source>Stage to add</source>
<translation>Hinzuzufügendes Stadium</translation>
</message>
<message>
<source>Add stage</source>
<translation>Stadium hinzufügen</translation>
</message>
<message>
<source>Remove stage</source>
<translation>Stadium entfernen</translation>
</message>
<message>
<source>Sum of the schedule</source>
<translation>Summe des Zeitplans</translation>
</message>
<message>
<source>Delete</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name}, {name2}</source>
<translation>{name}, {name2}</translation>
</message>
<message>
<source>Stage {value}</source>
<translation>Stadium {value}</translation>
</message>
<message>
<source>Add stage {name}</source>
<translation>Stadium hinzufügen: {name}</translation>
</message>
<message>
<source>Remove stage {name}</source>
<translation>Stadium entfernen: {name}</translation>
</message>
<message>
<source>The plan was changed meanwhile; ask again.</source>
<translation>Der Plan wurde inzwischen geändert; bitte neu fragen.</translation>
</message>
<message>
<source>with the mean</source>
<translation>im Mittel</translation>
</message>
<message>
<source>at the {LOWEST}</source>
<translation>– {LOWEST} –</translation>
</message>
<message>
<source>{met} of {len} stages reach their target {of}.</source>
<translation>{met} von {len} Stadien erreichen ihr Ziel {of}.</translation>
</message>
<message>
<source>{whole} of {len} options reach the target of every stage {of}.</source>
<translation>{whole} von {len} Varianten erreichen das Ziel jedes Stadiums {of}.</translation>
</message>
<message>
<source> Stopped: {value} options were not reckoned.</source>
<translation> Angehalten: {value} Varianten wurden nicht gerechnet.</translation>
</message>
<message>
<source>{in_file_name} week by week.pdf</source>
<translation>{in_file_name} Woche für Woche.pdf</translation>
</message>
<message>
<source>Weekly sheet</source>
<translation>Wochenblatt</translation>
</message>
<message>
<source>sheet</source>
<translation>Wochenblatt</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.sweep_board</name>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Sweep shown</source>
<translation>Gezeigte Reihe</translation>
</message>
<message>
<source>Beside it</source>
<translation>Daneben</translation>
</message>
<message>
<source>The map is of</source>
<translation>Die Karte zeigt</translation>
</message>
<message>
<source>The chosen point</source>
<translation>Der gewählte Punkt</translation>
</message>
<message>
<source>Keep as an option</source>
<translation>Als Variante behalten</translation>
</message>
<message>
<source>Beside the plan, to be compared (Enter)</source>
<translation>Neben dem Plan, zum Vergleichen (Eingabe)</translation>
</message>
<message>
<source>Adopt</source>
<translation>Übernehmen</translation>
</message>
<message>
<source>Give the plan the values of this point</source>
<translation>Dem Plan die Werte dieses Punkts geben</translation>
</message>
<message>
<source>Copy the points</source>
<translation>Punkte kopieren</translation>
</message>
<message>
<source>Tab-separated, with every figure</source>
<translation>Mit Tabulatoren, mit allen Kennzahlen</translation>
</message>
<message>
<source>HH:mm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name} </source>
<translation>{name} </translation>
</message>
<message>
<source>other hours or target</source>
<translation>andere Stunden oder anderes Ziel</translation>
</message>
<message>
<source>{lead}before: {differs}</source>
<translation>{lead}vorher: {differs}</translation>
</message>
<message>
<source> and </source>
<translation> und </translation>
</message>
<message>
<source>{capital} · {when} · {value}</source>
<translation>{capital} · {when} · {value}</translation>
</message>
<message>
<source>Beside it: {_title}</source>
<translation>Daneben: {_title}</translation>
</message>
<message>
<source>Nothing beside it</source>
<translation>Nichts daneben</translation>
</message>
<message>
<source>{name}, {when}</source>
<translation>{name}, {when}</translation>
</message>
<message>
<source> · the plan now</source>
<translation> · der jetzige Plan</translation>
</message>
<message>
<source>Still to be computed</source>
<translation>Noch zu berechnen</translation>
</message>
<message>
<source>{where}: {in_unit}</source>
<translation>{where}: {in_unit}</translation>
</message>
<message>
<source>{where}, {said}</source>
<translation>{where}, {said}</translation>
</message>
<message>
<source>, of all canopies {percent}</source>
<translation>, von allen Blätterdächern {percent}</translation>
</message>
<message>
<source>{words}. {capital}</source>
<translation>{words}. {capital}</translation>
</message>
<message>
<source>Click a point to see it, to keep it as an option or to adopt it.</source>
<translation>Auf einen Punkt klicken, um ihn zu sehen, als Variante zu behalten oder zu übernehmen.</translation>
</message>
<message>
<source>Framed: {join}.</source>
<translation>Umrandet: {join}.</translation>
</message>
<message>
<source>'{label}' is not held against points: their prices are not reckoned.</source>
<translation>„{label}“ wird Punkten nicht abverlangt: Ihre Preise sind nicht gerechnet.</translation>
</message>
<message>
<source>These points are of '{name}' before it was changed; any can be kept as an option, sweep again to adopt one.</source>
<translation>Diese Punkte gehören zu „{name}“ vor der Änderung; jeder lässt sich als Variante behalten, zum Übernehmen die Reihe neu rechnen.</translation>
</message>
<message>
<source>{part}.</source>
<translation>{part}.</translation>
</message>
<message>
<source>{words} {text}</source>
<translation>{words} {text}</translation>
</message>
<message>
<source>Adopt {over}</source>
<translation>Übernehmen: {over}</translation>
</message>
<message>
<source>Adopted {words}.</source>
<translation>Übernommen: {words}.</translation>
</message>
<message>
<source>{name} at {value} {written} {unit}</source>
<translation>{name} {value} {written} {unit}</translation>
</message>
<message>
<source>least</source>
<translation>mindestens</translation>
</message>
<message>
<source>most</source>
<translation>höchstens</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.sweep_form</name>
<message>
<source>All lamps</source>
<translation>Alle Lampen</translation>
</message>
<message>
<source>All walls</source>
<translation>Alle Wände</translation>
</message>
<message>
<source>All obstacles</source>
<translation>Alle Hindernisse</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>size</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>spacing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tariff</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>overlap</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>span</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Where</source>
<translation>Wo</translation>
</message>
<message>
<source>From</source>
<translation>Von</translation>
</message>
<message>
<source>To</source>
<translation>Bis</translation>
</message>
<message>
<source>Points</source>
<translation>Punkte</translation>
</message>
<message>
<source>What is gone over</source>
<translation>Was durchlaufen wird</translation>
</message>
<message>
<source>Lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>Kind of lamp</source>
<translation>Art der Lampe</translation>
</message>
<message>
<source>Nothing else</source>
<translation>Nichts weiter</translation>
</message>
<message>
<source>linings</source>
<translation>Auskleidungen</translation>
</message>
<message>
<source>lamps</source>
<translation>Lampen</translation>
</message>
<message>
<source>Tick the {noun} to go over.</source>
<translation>{noun} zum Durchlaufen ankreuzen.</translation>
</message>
<message>
<source>The range must rise: write a 'To' above 'From'.</source>
<translation>Der Bereich muss steigen: ein „Bis“ über „Von“ eingeben.</translation>
</message>
<message>
<source>Over</source>
<translation>Über</translation>
</message>
<message>
<source>And over</source>
<translation>Und über</translation>
</message>
<message>
<source>Sweep</source>
<translation>Reihe rechnen</translation>
</message>
<message>
<source>Compute the light at each of these points</source>
<translation>Das Licht an jedem dieser Punkte berechnen</translation>
</message>
<message>
<source>Both axes are the same; choose another one, or nothing else.</source>
<translation>Beide Achsen sind gleich; eine andere wählen oder nichts weiter.</translation>
</message>
<message>
<source>{len} of {size} points.</source>
<translation>{len} von {size} Punkten.</translation>
</message>
<message>
<source> Stopped; what is done is kept, sweep again to go on.</source>
<translation> Angehalten; Fertiges bleibt, zum Fortsetzen die Reihe neu rechnen.</translation>
</message>
<message>
<source> {len} cannot be: {bad}</source>
<translation> {len} nicht möglich: {bad}</translation>
</message>
<message>
<source>-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sweeps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{fingerprint}.jsonl</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>*.jsonl</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.pages.side.variants</name>
<message>
<source>The sketch is back where it was; adopt the option to work on with it.</source>
<translation>Die Skizze ist wieder, wo sie war; zum Weiterarbeiten die Variante übernehmen.</translation>
</message>
<message>
<source>Go on sketching; it stays as it is now.</source>
<translation>Weiterskizzieren; sie bleibt, wie sie jetzt ist.</translation>
</message>
<message>
<source>{name}, kept</source>
<translation>{name}, behalten</translation>
</message>
<message>
<source>Keep option {found}</source>
<translation>Variante behalten: {found}</translation>
</message>
<message>
<source>Kept as option '{found}'. {words}</source>
<translation>Als Variante „{found}“ behalten. {words}</translation>
</message>
<message>
<source>keep_new</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>keep_later</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>As new</source>
<translation>Wie neu</translation>
</message>
<message>
<source>A year on</source>
<translation>Ein Jahr später</translation>
</message>
<message>
<source> {words}</source>
<translation> {words}</translation>
</message>
<message>
<source>Kept as option '{found}', beside the plan.{more}</source>
<translation>Als Variante „{found}“ behalten, neben dem Plan.{more}</translation>
</message>
<message>
<source>Try lining {only}</source>
<translation>Auskleidung versuchen: {only}</translation>
</message>
<message>
<source>Try {count} options</source>
<translation>{count} Varianten versuchen</translation>
</message>
<message>
<source> {value} more cannot be either.</source>
<translation> {value} weitere gehen auch nicht.</translation>
</message>
<message>
<source>{count} tried. {cannot}{rest}</source>
<translation>{count} versucht. {cannot}{rest}</translation>
</message>
<message>
<source>An option needs a name.</source>
<translation>Eine Variante braucht einen Namen.</translation>
</message>
<message>
<source>Rename option {name}</source>
<translation>Variante umbenennen: {name}</translation>
</message>
<message>
<source>Remove option {name}</source>
<translation>Variante entfernen: {name}</translation>
</message>
<message>
<source>Move option {name}</source>
<translation>Variante verschieben: {name}</translation>
</message>
<message>
<source>Duplicate option {name}</source>
<translation>Variante duplizieren: {name}</translation>
</message>
<message>
<source>The sketch is '{name}' now; what was on it is kept as an option.</source>
<translation>Die Skizze ist jetzt „{name}“; was darauf war, bleibt als Variante.</translation>
</message>
<message>
<source>Open option {name}</source>
<translation>Variante öffnen: {name}</translation>
</message>
<message>
<source>Adopt option {name}</source>
<translation>Variante übernehmen: {name}</translation>
</message>
<message>
<source>'{name}' is the plan now.</source>
<translation>„{name}“ ist jetzt der Plan.</translation>
</message>
<message>
<source>{words} Undo brings the former plan back.</source>
<translation>{words} Rückgängig bringt den vorigen Plan zurück.</translation>
</message>
<message>
<source>{text}  {name}</source>
<translation>{text}  {name}</translation>
</message>
<message>
<source>Linings to try</source>
<translation>Zu versuchende Auskleidungen</translation>
</message>
<message>
<source>Lamps to try</source>
<translation>Zu versuchende Lampen</translation>
</message>
<message>
<source>Linings go onto</source>
<translation>Auskleidungen kommen an</translation>
</message>
<message>
<source>Lamps, from</source>
<translation>Lampen, von</translation>
</message>
<message>
<source>to</source>
<translation>bis</translation>
</message>
<message>
<source>Several hanging heights</source>
<translation>Mehrere Hängehöhen</translation>
</message>
<message>
<source>From</source>
<translation>Von</translation>
</message>
<message>
<source>To</source>
<translation>Bis</translation>
</message>
<message>
<source>How many</source>
<translation>Wie viele</translation>
</message>
<message>
<source>What will be tried</source>
<translation>Was versucht wird</translation>
</message>
<message>
<source>Try them</source>
<translation>Versuchen</translation>
</message>
<message>
<source>One option for every combination</source>
<translation>Eine Variante für jede Verbindung</translation>
</message>
<message>
<source>Linings</source>
<translation>Auskleidungen</translation>
</message>
<message>
<source>Lamps</source>
<translation>Lampen</translation>
</message>
<message>
<source>{linings} lining{value}</source>
<translation>{linings} Auskleidung{value}</translation>
</message>
<message>
<source>s</source>
<translation>en</translation>
</message>
<message>
<source>{value} kinds and numbers of lamps</source>
<translation>{value} Arten und Zahlen von Lampen</translation>
</message>
<message>
<source>{heights} heights</source>
<translation>{heights} Höhen</translation>
</message>
<message>
<source> x </source>
<translation> × </translation>
</message>
<message>
<source>Tick linings, lamps, or several heights.</source>
<translation>Auskleidungen, Lampen oder mehrere Höhen ankreuzen.</translation>
</message>
<message>
<source>Try it</source>
<translation>Diese versuchen</translation>
</message>
<message>
<source>Try these {whole}</source>
<translation>Diese {whole} versuchen</translation>
</message>
<message>
<source>Try</source>
<translation>Versuchen</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.weighing</name>
<message>
<source>Light</source>
<translation>Licht</translation>
</message>
<message>
<source>Difference from the baseline</source>
<translation>Unterschied zur Basis</translation>
</message>
<message>
<source>Ratio to the baseline</source>
<translation>Verhältnis zur Basis</translation>
</message>
<message>
<source>no wish</source>
<translation>kein Wunsch</translation>
</message>
<message>
<source>Most even light</source>
<translation>Gleichmäßigstes Licht</translation>
</message>
<message>
<source>Least energy</source>
<translation>Wenigste Energie</translation>
</message>
<message>
<source>Cheapest</source>
<translation>Am billigsten</translation>
</message>
<message>
<source>Maps show</source>
<translation>Karten zeigen</translation>
</message>
<message>
<source>Baseline</source>
<translation>Basis</translation>
</message>
<message>
<source>What the others are measured against: the plan, an option or open air.</source>
<translation>Womit die anderen verglichen werden: der Plan, eine Variante oder freie Luft.</translation>
</message>
<message>
<source>Own scale for each map</source>
<translation>Eigene Skala für jede Karte</translation>
</message>
<message>
<source>Open air, without any walls, as well</source>
<translation>Auch freie Luft, ganz ohne Wände</translation>
</message>
<message>
<source>Show only what keeps to</source>
<translation>Nur zeigen, was einhält</translation>
</message>
<message>
<source>How many keep the wishes</source>
<translation>Wie viele die Wünsche einhalten</translation>
</message>
<message>
<source>Ranking by mean PPFD</source>
<translation>Rangfolge nach mittlerer PPFD</translation>
</message>
<message>
<source>Along the line A to B</source>
<translation>Entlang der Linie A bis B</translation>
</message>
<message>
<source>{value} of {len} keep these wishes.</source>
<translation>{value} von {len} halten diese Wünsche ein.</translation>
</message>
<message>
<source>total</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cost</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>money</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Cost</source>
<translation>Kosten</translation>
</message>
<message>
<source>What the chart says</source>
<translation>Was das Diagramm sagt</translation>
</message>
<message>
<source>The options on the line are beaten by none in both at once.</source>
<translation>Die Varianten auf der Linie schlägt keine in beidem zugleich.</translation>
</message>
<message>
<source>Prices are written under 'Worth it'.</source>
<translation>Preise werden unter „Lohnt es sich“ eingetragen.</translation>
</message>
<message>
<source>How sure the difference is will be known in a moment.</source>
<translation>Wie sicher der Unterschied ist, zeigt sich gleich.</translation>
</message>
<message>
<source>Option</source>
<translation>Variante</translation>
</message>
<message>
<source>Money at
the same light</source>
<translation>Geld bei
gleichem Licht</translation>
</message>
<message>
<source>Best in
{inside}</source>
<translation>Beste bei
{inside}</translation>
</message>
<message>
<source>What can be told</source>
<translation>Was sich sagen lässt</translation>
</message>
<message>
<source>Odds against the baseline</source>
<translation>Chancen gegen die Basis</translation>
</message>
<message>
<source>Against {name}</source>
<translation>Gegen {name}</translation>
</message>
<message>
<source>baseline</source>
<translation>Basis</translation>
</message>
<message>
<source>There is nothing to set against the plan yet; try other options first.</source>
<translation>Noch gibt es nichts, was sich dem Plan gegenüberstellen lässt; zuerst andere Varianten versuchen.</translation>
</message>
<message>
<source>{name} and {name2} cannot be weighed: one of them is dark.</source>
<translation>{name} und {name2} lassen sich nicht abwägen: Eines von beiden ist dunkel.</translation>
</message>
<message>
<source>Write a tariff under 'Worth it', and money is weighed as well.</source>
<translation>Unter „Lohnt es sich“ einen Tarif eintragen, dann wird auch Geld abgewogen.</translation>
</message>
<message>
<source>Money is weighed once all prices are known; see 'Worth it'.</source>
<translation>Geld wird abgewogen, sobald alle Preise bekannt sind; siehe „Lohnt es sich“.</translation>
</message>
<message>
<source>Choose an option below for all that can be told of it against {name}.</source>
<translation>Unten eine Variante wählen, um alles zu lesen, was sich von ihr gegen {name} sagen lässt.</translation>
</message>
<message>
<source>{_SOON}
{choose}</source>
<translation>{_SOON}
{choose}</translation>
</message>
<message>
<source>Equal within</source>
<translation>Gleich innerhalb</translation>
</message>
<message>
<source>Options that differ by less than this are equal for your purpose.</source>
<translation>Varianten, die sich um weniger unterscheiden, sind für Ihren Zweck gleich.</translation>
</message>
<message>
<source>By 20,000 draws from the ranges of reflectances, photon flux, beams and hanging heights; what two options share is drawn once for both. Intervals hold 95 %.</source>
<translation>Aus 20.000 Ziehungen aus den Spannen von Reflexionsgraden, Photonenfluss, Abstrahlwinkeln und Hängehöhen; was zwei Varianten gemeinsam haben, wird für beide einmal gezogen. Intervalle halten 95 %.</translation>
</message>
<message>
<source>The draws take each lining anywhere in its stated range; the table takes the value named, so the two may differ where a range is not even about its value.</source>
<translation>Die Ziehungen nehmen jede Auskleidung irgendwo in ihrer genannten Spanne; die Tabelle nimmt den genannten Wert, sodass sich beide unterscheiden können, wo eine Spanne nicht gleichmäßig um ihren Wert liegt.</translation>
</message>
<message>
<source>Measure it</source>
<translation>Messen</translation>
</message>
<message>
<source>Go to the survey page</source>
<translation>Zur Seite Messung gehen</translation>
</message>
<message>
<source>Of all options {name} has the most light with {chance_words}.</source>
<translation>Von allen Varianten hat {name} das meiste Licht mit {chance_words}.</translation>
</message>
<message>
<source>the very same</source>
<translation>genau dasselbe</translation>
</message>
<message>
<source>{middle} % ({low} to {high})</source>
<translation>{middle} % ({low} bis {high})</translation>
</message>
<message>
<source>{span}
equal for the purpose</source>
<translation>{span}
gleich für den Zweck</translation>
</message>
<message>
<source>{span}
{chance_words}</source>
<translation>{span}
{chance_words}</translation>
</message>
<message>
<source>{span}
not clear</source>
<translation>{span}
nicht klar</translation>
</message>
<message>
<source>saves</source>
<translation>spart</translation>
</message>
<message>
<source>costs</source>
<translation>kostet</translation>
</message>
<message>
<source>{word} {money} ({money2} to {money3})</source>
<translation>{word} {money} ({money2} bis {money3})</translation>
</message>
</context>
<context>
<name>planner.app.pages.side.worth_form</name>
<message>
<source>K</source>
<translation>K</translation>
</message>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Tariff</source>
<translation>Tarif</translation>
</message>
<message>
<source>tariff</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Currency</source>
<translation>Währung</translation>
</message>
<message>
<source>span</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Prices of lamps</source>
<translation>Preise der Lampen</translation>
</message>
<message>
<source>Lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>Price of one</source>
<translation>Preis je Stück</translation>
</message>
<message>
<source>price</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set price of lamp</source>
<translation>Lampenpreis setzen</translation>
</message>
<message>
<source>Leave it at 0 while not known.</source>
<translation>Auf 0 lassen, solange unbekannt.</translation>
</message>
<message>
<source>How it is sold</source>
<translation>Wie sie verkauft wird</translation>
</message>
<message>
<source>Lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>Rolls</source>
<translation>Rollen</translation>
</message>
<message>
<source>Sheets</source>
<translation>Platten</translation>
</message>
<message>
<source>Sold as</source>
<translation>Verkauft als</translation>
</message>
<message>
<source>Set {word} of goods</source>
<translation>{word} der Ware setzen</translation>
</message>
<message>
<source>width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set price of goods</source>
<translation>Warenpreis setzen</translation>
</message>
<message>
<source>Of one roll or sheet; leave it at 0 while not known.</source>
<translation>Einer Rolle oder Platte; auf 0 lassen, solange unbekannt.</translation>
</message>
<message>
<source>overlap</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Seams are welcome</source>
<translation>Nähte sind willkommen</translation>
</message>
<message>
<source>Pieces that fit whole may be put together from strips where that saves some.</source>
<translation>Stücke, die ganz passen, dürfen aus Streifen zusammengesetzt werden, wo das etwas spart.</translation>
</message>
<message>
<source>Lamp heat</source>
<translation>Lampenwärme</translation>
</message>
<message>
<source>Warmer by at most</source>
<translation>Höchstens wärmer um</translation>
</message>
<message>
<source>How much warmer than the room the space may become.</source>
<translation>Wie viel wärmer als das Zimmer der Raum werden darf.</translation>
</message>
<message>
<source>Air flow</source>
<translation>Luftstrom</translation>
</message>
<message>
<source>{ASSUMPTIONS} {CAUTION}</source>
<translation>{ASSUMPTIONS} {CAUTION}</translation>
</message>
<message>
<source>Set currency</source>
<translation>Währung setzen</translation>
</message>
<message>
<source>Welcome seams</source>
<translation>Nähte zulassen</translation>
</message>
<message>
<source>Avoid seams</source>
<translation>Nähte meiden</translation>
</message>
<message>
<source>Set form of sale</source>
<translation>Verkaufsform setzen</translation>
</message>
<message>
<source>No lamp is lit, so there is no heat to carry away.</source>
<translation>Keine Lampe brennt, also ist keine Wärme abzuführen.</translation>
</message>
<message>
<source>{text} of lamp heat need {flow} m³/h of room air, so that the space becomes at most {text2} warmer.</source>
<translation>{text} Lampenwärme brauchen {flow} m³/h Zimmerluft, damit der Raum höchstens {text2} wärmer wird.</translation>
</message>
<message>
<source>The light is still being computed.</source>
<translation>Das Licht wird noch berechnet.</translation>
</message>
<message>
<source>'{name}' is the baseline: choose another option to weigh it. Below is what all of its linings and lamps take.</source>
<translation>„{name}“ ist die Basis: zum Abwägen eine andere Variante wählen. Unten steht, was alle ihre Auskleidungen und Lampen brauchen.</translation>
</message>
<message>
<source>What has to be bought is being laid out.</source>
<translation>Was zu kaufen ist, wird gerade ausgelegt.</translation>
</message>
<message>
<source>Cutting list</source>
<translation>Zuschnittliste</translation>
</message>
<message>
<source>roll</source>
<translation>Rolle</translation>
</message>
<message>
<source>sheet</source>
<translation>Platte</translation>
</message>
<message>
<source>{format_length} x {format_length2}</source>
<translation>{format_length} × {format_length2}</translation>
</message>
<message>
<source>{name}, {kind} {value}: {label}, {size}.</source>
<translation>{name}, {kind} {value}: {label}, {size}.</translation>
</message>
<message>
<source>: {used} cut, and no layout does with less</source>
<translation>: {used} geschnitten, und keine Auslegung kommt mit weniger aus</translation>
</message>
<message>
<source>: {used} cut; no layout does with less than {least}</source>
<translation>: {used} geschnitten; keine Auslegung kommt mit weniger als {least} aus</translation>
</message>
<message>
<source>{name} {value} of {rolls}, {width} wide</source>
<translation>{name} {value} von {rolls}, {width} breit</translation>
</message>
<message>
<source>Wall 1</source>
<translation>Wand 1</translation>
</message>
<message>
<source>{label}, {size}</source>
<translation>{label}, {size}</translation>
</message>
<message>
<source>What</source>
<translation>Was</translation>
</message>
<message>
<source>Area</source>
<translation>Fläche</translation>
</message>
<message>
<source>Pieces</source>
<translation>Stücke</translation>
</message>
<message>
<source>To buy</source>
<translation>Zu kaufen</translation>
</message>
<message>
<source>Waste</source>
<translation>Verschnitt</translation>
</message>
<message>
<source>Cost</source>
<translation>Kosten</translation>
</message>
<message>
<source>To buy and to cut</source>
<translation>Zu kaufen und zu schneiden</translation>
</message>
<message>
<source>Linings to buy</source>
<translation>Zu kaufende Auskleidungen</translation>
</message>
<message>
<source>Whether it is worth it</source>
<translation>Ob es sich lohnt</translation>
</message>
<message>
<source>To buy and to cut for '{name}'</source>
<translation>Zu kaufen und zu schneiden für „{name}“</translation>
</message>
<message>
<source>No lining has to be bought, so nothing is cut.</source>
<translation>Keine Auskleidung ist zu kaufen, also wird nichts geschnitten.</translation>
</message>
<message>
<source>Laying out the pieces for '{name}'…</source>
<translation>Die Stücke für „{name}“ werden ausgelegt…</translation>
</message>
<message>
<source>Say how the linings are sold, and the pieces are laid out here.</source>
<translation>Angeben, wie die Auskleidungen verkauft werden, dann werden die Stücke hier ausgelegt.</translation>
</message>
<message>
<source>say how it is sold</source>
<translation>Verkaufsform angeben</translation>
</message>
<message>
<source>{count} lamp</source>
<translation>{count} Lampe</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>All of it</source>
<translation>Alles zusammen</translation>
</message>
<message>
<source>is there</source>
<translation>ist da</translation>
</message>
<message>
<source>no price</source>
<translation>kein Preis</translation>
</message>
<message>
<source>{count} {kind}</source>
<translation>{count} {kind}</translation>
</message>
</context>
<context>
<name>planner.app.pages.sketch.asked</name>
<message>
<source>beside the drawing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>What was asked beside the drawing ({topic})</source>
<translation>Das neben der Zeichnung Gefragte ({topic})</translation>
</message>
<message>
<source>ladder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wall</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wish</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>schedule</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Finding the light that came by wall {value} …</source>
<translation>Das Licht, das über Wand {value} kam, wird gesucht …</translation>
</message>
<message>
<source>light from the side</source>
<translation>Licht von der Seite</translation>
</message>
<message>
<source>The light from the side</source>
<translation>Das Licht von der Seite</translation>
</message>
</context>
<context>
<name>planner.app.pages.sketch.canopies</name>
<message>
<source>inside</source>
<translation>im Band</translation>
</message>
<message>
<source>over</source>
<translation>darüber</translation>
</message>
<message>
<source>under</source>
<translation>darunter</translation>
</message>
<message>
<source>{text}, {percent} {most}</source>
<translation>{text}, {percent} {most}</translation>
</message>
<message>
<source>Canopies</source>
<translation>Blätterdächer</translation>
</message>
<message>
<source>More canopies</source>
<translation>Weitere Blätterdächer</translation>
</message>
<message>
<source>{ALL_TOGETHER}: {fares}</source>
<translation>{ALL_TOGETHER}: {fares}</translation>
</message>
<message>
<source>Own canopy</source>
<translation>Eigenes Blätterdach</translation>
</message>
<message>
<source>{name}…</source>
<translation>{name}…</translation>
</message>
<message>
<source>{name}: {fares}</source>
<translation>{name}: {fares}</translation>
</message>
<message>
<source>{value} more</source>
<translation>{value} weitere</translation>
</message>
<message>
<source>The plan is judged by it: options, searches and surveys speak of it.</source>
<translation>Nach ihm wird der Plan beurteilt: Varianten, Suchen und Messungen sprechen von ihm.</translation>
</message>
</context>
<context>
<name>planner.app.pages.sketch.column</name>
<message>
<source>What is selected</source>
<translation>Was gewählt ist</translation>
</message>
<message>
<source>Fiel&amp;ds of</source>
<translation>Felder &amp;von</translation>
</message>
<message>
<source> (door)</source>
<translation> (Tür)</translation>
</message>
<message>
<source>{words}{door}</source>
<translation>{words}{door}</translation>
</message>
<message>
<source>Canopy, day and target</source>
<translation>Blätterdach, Tag und Ziel</translation>
</message>
<message>
<source>The light that is wanted. PPFD is the light arriving at the moment; DLI is what adds up over a day. A band is a place to begin, not a pass or a fail.</source>
<translation>Das gewünschte Licht. PPFD ist das Licht, das im Augenblick ankommt; DLI ist, was über einen Tag zusammenkommt. Ein Zielbereich ist ein Anfang, kein Bestanden oder Durchgefallen.</translation>
</message>
<message>
<source>ppfd-low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>From</source>
<translation>Von</translation>
</message>
<message>
<source>ppfd-high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>To</source>
<translation>Bis</translation>
</message>
<message>
<source>dli-low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli-high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ppfd</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>No target</source>
<translation>Kein Ziel</translation>
</message>
<message>
<source>Own PPFD band</source>
<translation>Eigener PPFD-Bereich</translation>
</message>
<message>
<source>Own DLI band</source>
<translation>Eigener DLI-Bereich</translation>
</message>
<message>
<source>Published.</source>
<translation>Veröffentlicht.</translation>
</message>
<message>
<source>Quoted second-hand.</source>
<translation>Aus zweiter Hand zitiert.</translation>
</message>
<message>
<source>Typical, from memory.</source>
<translation>Üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Target</source>
<translation>Ziel</translation>
</message>
<message>
<source>{name}, {name2}</source>
<translation>{name}, {name2}</translation>
</message>
<message>
<source>Use its usual {format_number} h of light</source>
<translation>Die üblichen {format_number} h Licht nehmen</translation>
</message>
<message>
<source>Without hours of light no PPFD reaches it.</source>
<translation>Ohne Beleuchtungsdauer erreicht es keine PPFD.</translation>
</message>
<message>
<source>In {hours} h that is {ppfd} to {ppfd2} (PPFD).</source>
<translation>In {hours} h sind das {ppfd} bis {ppfd2} (PPFD).</translation>
</message>
<message>
<source> What the room brings is not in it.</source>
<translation> Was der Raum bringt, ist nicht dabei.</translation>
</message>
<message>
<source>Choose target {itemText}</source>
<translation>Ziel wählen: {itemText}</translation>
</message>
<message>
<source>Remove target</source>
<translation>Ziel entfernen</translation>
</message>
<message>
<source>Set photoperiod</source>
<translation>Beleuchtungsdauer setzen</translation>
</message>
<message>
<source>Closed: leaves or a survey board fill the plane, and what lies below gets no light. Open: the plane is only where the meter is held, and light goes on to the floor and comes back.</source>
<translation>Geschlossen: Blätter oder ein Lochbrett füllen die Ebene, und was darunter liegt, bekommt kein Licht. Offen: Die Ebene ist nur, wo das Messgerät gehalten wird, und das Licht geht weiter zum Boden und kommt zurück.</translation>
</message>
<message>
<source>Judge the plan by its own canopy</source>
<translation>Den Plan nach seinem eigenen Blätterdach beurteilen</translation>
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Height</source>
<translation>Höhe</translation>
</message>
<message>
<source>Closed canopy</source>
<translation>Geschlossen</translation>
</message>
<message>
<source>Close canopy</source>
<translation>Blätterdach schließen</translation>
</message>
<message>
<source>Open canopy</source>
<translation>Blätterdach öffnen</translation>
</message>
<message>
<source>canopy-reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Reflectance</source>
<translation>Reflexionsgrad</translation>
</message>
<message>
<source>Figures, options and searches speak of it again.</source>
<translation>Kennzahlen, Varianten und Suchen sprechen wieder von ihm.</translation>
</message>
<message>
<source>Day and target</source>
<translation>Tag und Ziel</translation>
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The plan is judged by {inside}.</source>
<translation>Der Plan wird beurteilt nach: {inside}.</translation>
</message>
</context>
<context>
<name>planner.app.pages.sketch.details</name>
<message>
<source>Warning</source>
<translation>Problem</translation>
</message>
<message>
<source>Caution</source>
<translation>Warnhinweis</translation>
</message>
<message>
<source>Hint</source>
<translation>Hinweis</translation>
</message>
<message>
<source>All cautions for this plan</source>
<translation>Alle Warnhinweise zu diesem Plan</translation>
</message>
<message>
<source>no-lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>no-target</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{count} {name}{value}</source>
<translation>{count} {name}{value}</translation>
</message>
<message>
<source>s</source>
<translation>e</translation>
</message>
<message>
<source>Show the place this is about, and what to do</source>
<translation>Die Stelle zeigen, um die es geht, und was zu tun ist</translation>
</message>
<message>
<source>{NAMES}: {sentence}</source>
<translation>{NAMES}: {sentence}</translation>
</message>
<message>
<source>Where the photons went</source>
<translation>Wohin die Photonen gingen</translation>
</message>
<message>
<source>{title}: {percent}</source>
<translation>{title}: {percent}</translation>
</message>
<message>
<source>Cautions</source>
<translation>Warnhinweise</translation>
</message>
<message>
<source>All figures</source>
<translation>Alle Kennzahlen</translation>
</message>
<message>
<source>Which surface to line first</source>
<translation>Welche Fläche zuerst auskleiden</translation>
</message>
</context>
<context>
<name>planner.app.pages.sketch.growing</name>
<message>
<source>Found quickly; Side by side, Schedule, finds it with care.</source>
<translation>Schnell gefunden; sorgfältig sucht „Nebeneinander“, „Zeitplan“.</translation>
</message>
<message>
<source>Set to a week of the schedule</source>
<translation>Auf eine Woche des Zeitplans setzen</translation>
</message>
<message>
<source>{when}: {name}</source>
<translation>{when}: {name}</translation>
</message>
<message>
<source>{text}. Canopy {format_length}, {value} {above} above it, {max} %, {format_number} h</source>
<translation>{text}. Blätterdach {format_length}, {value} {above} darüber, {max} %, {format_number} h</translation>
</message>
<message>
<source>lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>lamps</source>
<translation>Lampen</translation>
</message>
<message>
<source>Grow along the schedule</source>
<translation>Nach dem Zeitplan wachsen</translation>
</message>
<message>
<source>Finds height and output for each stage of the schedule; a slider then moves canopy, lamps and day through its weeks.</source>
<translation>Sucht Höhe und Dimmung für jedes Stadium des Zeitplans; ein Schieber führt dann Blätterdach, Lampen und Tag durch seine Wochen.</translation>
</message>
<message>
<source>Week of the schedule</source>
<translation>Woche des Zeitplans</translation>
</message>
<message>
<source>Finding the stages of the schedule</source>
<translation>Die Stadien des Zeitplans werden gesucht</translation>
</message>
<message>
<source>schedule</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Finding height and output of each stage …</source>
<translation>Höhe und Dimmung jedes Stadiums werden gesucht …</translation>
</message>
<message>
<source>growing time</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{text}. {QUICK}</source>
<translation>{text}. {QUICK}</translation>
</message>
</context>
<context>
<name>planner.app.pages.sketch.page</name>
<message>
<source>What the map shows</source>
<translation>Was die Karte zeigt</translation>
</message>
<message>
<source>plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>side</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>copy_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>export_{key}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shows</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>colour_map</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{map_name} ▾</source>
<translation>{map_name} ▾</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.pages.sketch.strip</name>
<message>
<source>No figure yet</source>
<translation>Noch keine Kennzahl</translation>
</message>
<message>
<source>Copy this figure</source>
<translation>Diese Zahl kopieren</translation>
</message>
<message>
<source>{label}: {text}</source>
<translation>{label}: {text}</translation>
</message>
<message>
<source>{label}, {unit}</source>
<translation>{label}, {unit}</translation>
</message>
<message>
<source>No estimate yet.</source>
<translation>Noch keine Schätzung.</translation>
</message>
<message>
<source>What the light does</source>
<translation>Was das Licht tut</translation>
</message>
<message>
<source>Set output of all lamps</source>
<translation>Dimmung aller Lampen setzen</translation>
</message>
<message>
<source>What would help most</source>
<translation>Was am meisten helfen würde</translation>
</message>
<message>
<source>Do it</source>
<translation>Ausführen</translation>
</message>
<message>
<source>Line the walls</source>
<translation>Wände auskleiden</translation>
</message>
<message>
<source>Hang a lamp</source>
<translation>Lampe aufhängen</translation>
</message>
<message>
<source>Choose a crop or band</source>
<translation>Kultur oder Bereich wählen</translation>
</message>
<message>
<source>Sets the lamps so, as one step that can be undone.</source>
<translation>Stellt die Lampen so ein, als ein Schritt, der sich rückgängig machen lässt.</translation>
</message>
<message>
<source>What it still wants:</source>
<translation>Was noch fehlt:</translation>
</message>
<message>
<source>No crop and no band of light is chosen yet.</source>
<translation>Noch sind keine Kultur und kein Lichtbereich gewählt.</translation>
</message>
<message>
<source>Do it: {text}</source>
<translation>Ausführen: {text}</translation>
</message>
<message>
<source>This is computed when the plan has rested for a second or two.</source>
<translation>Das wird berechnet, wenn der Plan ein, zwei Sekunden geruht hat.</translation>
</message>
<message>
<source>No surface would bring anything: there is no light, or nothing left to gain.</source>
<translation>Keine Fläche brächte etwas: Es gibt kein Licht oder nichts mehr zu gewinnen.</translation>
</message>
<message>
<source>What ten points more of reflectance would bring to the mean and to the {LOWEST}, in {PPFD_UNIT}:</source>
<translation>Was zehn Punkte mehr Reflexionsgrad brächten (Mittel, {LOWEST}), in {PPFD_UNIT}:</translation>
</message>
<message>
<source> Surfaces of the same rank cannot be told apart.</source>
<translation> Flächen gleichen Ranges lassen sich nicht unterscheiden.</translation>
</message>
<message>
<source>{_rank}  {name}</source>
<translation>{_rank}  {name}</translation>
</message>
<message>
<source>Mark on the sketch</source>
<translation>Auf der Skizze markieren</translation>
</message>
<message>
<source>{ABOUT}{same}</source>
<translation>{ABOUT}{same}</translation>
</message>
</context>
<context>
<name>planner.app.pages.sketch.welcome</name>
<message>
<source>This is an invented demo: drag its lamps and walls and watch the light. Or begin with your own space, inside measures:</source>
<translation>Dies ist ein erfundenes Beispiel: Lampen und Wände ziehen und das Licht beobachten. Oder mit dem eigenen Raum beginnen, Innenmaße:</translation>
</message>
<message>
<source>Width</source>
<translation>Breite</translation>
</message>
<message>
<source>Depth</source>
<translation>Tiefe</translation>
</message>
<message>
<source>Height</source>
<translation>Höhe</translation>
</message>
<message>
<source>Shape</source>
<translation>Form</translation>
</message>
<message>
<source>Begin</source>
<translation>Beginnen</translation>
</message>
<message>
<source>An empty space of this size and shape, lined white.</source>
<translation>Ein leerer Raum dieser Größe und Form, weiß ausgekleidet.</translation>
</message>
<message>
<source>Begin my own space</source>
<translation>Meinen eigenen Raum beginnen</translation>
</message>
<message>
<source>Open a plan …</source>
<translation>Plan öffnen …</translation>
</message>
<message>
<source>Opens a plan's file.</source>
<translation>Öffnet die Datei eines Plans.</translation>
</message>
<message>
<source>Show me round</source>
<translation>Rundgang</translation>
</message>
<message>
<source>Six steps in place; Esc leaves at any time.</source>
<translation>Sechs Schritte am Ort; Esc beendet jederzeit.</translation>
</message>
<message>
<source>Stay here</source>
<translation>Hier bleiben</translation>
</message>
<message>
<source>Stays with the demo and puts this line away.</source>
<translation>Bleibt beim Beispiel und räumt diese Zeile weg.</translation>
</message>
</context>
<context>
<name>planner.app.pages.sketch.wish</name>
<message>
<source>Mean wanted</source>
<translation>Gewünschtes Mittel</translation>
</message>
<message>
<source>Find three ways</source>
<translation>Drei Wege suchen</translation>
</message>
<message>
<source>Looks for this mean by dimming, by the hanging height and by the lining of the walls. A press on the colour bar asks for the level pressed on.</source>
<translation>Sucht dieses Mittel über Dimmung, Hängehöhe und Auskleidung der Wände. Ein Druck auf den Farbbalken fragt nach der gedrückten Stufe.</translation>
</message>
<message>
<source>Do it</source>
<translation>Ausführen</translation>
</message>
<message>
<source>Looking for it …</source>
<translation>Wird gesucht …</translation>
</message>
<message>
<source>Do it: {in_unit}</source>
<translation>Ausführen: {in_unit}</translation>
</message>
<message>
<source>wish</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.pages.survey.board_panel</name>
<message>
<source>Printed paper</source>
<translation>Bedrucktes Papier</translation>
</message>
<message>
<source>White card</source>
<translation>Weißer Karton</translation>
</message>
<message>
<source>Grey card</source>
<translation>Graukarte</translation>
</message>
<message>
<source>Black card or cloth</source>
<translation>Schwarzer Karton oder Stoff</translation>
</message>
<message>
<source>Own number</source>
<translation>Eigener Wert</translation>
</message>
<message>
<source>No board: on the canopy itself</source>
<translation>Kein Lochbrett: direkt auf dem Blätterdach</translation>
</message>
<message>
<source>Say what the board is made of: white paper throws so much light back that a small bright space reads a third higher than over leaves. Until then the canopy it lies on is taken for it.</source>
<translation>Angeben, woraus das Lochbrett ist: Weißes Papier wirft so viel Licht zurück, dass ein kleiner heller Raum ein Drittel mehr anzeigt als über Blättern. Bis dahin gilt dafür das Blätterdach, auf dem es liegt.</translation>
</message>
<message>
<source>Typical reflectances, from memory: paper 80 %, white card 85 %, grey card 18 %, black 5 %. How sure each is stands in the record, and counts in every calibration.</source>
<translation>Übliche Reflexionsgrade, aus dem Gedächtnis: Papier 80 %, weißer Karton 85 %, Graukarte 18 %, Schwarz 5 %. Wie sicher jeder ist, steht im Protokoll und zählt in jedem Abgleich.</translation>
</message>
<message>
<source>Choose…</source>
<translation>Wählen…</translation>
</message>
<message>
<source>{words}, {value} %</source>
<translation>{words}, {value} %</translation>
</message>
<message>
<source>rows</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>margin</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hole_diameter</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Centres of equal cells</source>
<translation>Mitten gleicher Zellen</translation>
</message>
<message>
<source>From edge to edge</source>
<translation>Von Rand zu Rand</translation>
</message>
<message>
<source>A4</source>
<translation>A4</translation>
</message>
<message>
<source>a4</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Letter</source>
<translation>Letter</translation>
</message>
<message>
<source>letter</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The lighting standard EN 12464-1 asks for a spacing of at most 0.2 · 5^log d metres, d the longer side of the area in metres (the shorter where it is less than half of it).</source>
<translation>Die Beleuchtungsnorm EN 12464-1 verlangt einen Abstand von höchstens 0,2 · 5^log d Metern, d die längere Seite der Fläche in Metern (die kürzere, wo sie weniger als die Hälfte davon ist).</translation>
</message>
<message>
<source>board</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>door</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>warm-up</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>What is the board made of?</source>
<translation>Woraus ist das Lochbrett?</translation>
</message>
<message>
<source>Is the door shut as tightly as it will be?</source>
<translation>Ist die Tür so dicht geschlossen, wie sie es sein wird?</translation>
</message>
<message>
<source>How high do the lamps hang, measured now from their face to the canopy?</source>
<translation>Wie hoch hängen die Lampen, jetzt gemessen von ihrer Lichtfläche bis zum Blätterdach?</translation>
</message>
<message>
<source>Let the lamps warm up for 20 minutes: they fade by some per cent meanwhile.</source>
<translation>Die Lampen 20 Minuten warmlaufen lassen: Sie lassen dabei um einige Prozent nach.</translation>
</message>
<message>
<source>board_reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>drift</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Before the readings</source>
<translation>Vor den Messwerten</translation>
</message>
<message>
<source>Board</source>
<translation>Lochbrett</translation>
</message>
<message>
<source>Lamp height as measured</source>
<translation>Gemessene Lampenhöhe</translation>
</message>
<message>
<source>Shut</source>
<translation>Geschlossen</translation>
</message>
<message>
<source>Nothing leaks out at the door.</source>
<translation>An der Tür dringt nichts hinaus.</translation>
</message>
<message>
<source>Lamps on: start the clock</source>
<translation>Lampen an: Uhr starten</translation>
</message>
<message>
<source>Skip</source>
<translation>Überspringen</translation>
</message>
<message>
<source>What is not known becomes a doubt of the survey.</source>
<translation>Was unbekannt ist, wird zum Zweifel der Messung.</translation>
</message>
<message>
<source>{value} of {len}: {_STEPS}</source>
<translation>{value} von {len}: {_STEPS}</translation>
</message>
<message>
<source>Take it</source>
<translation>Übernehmen</translation>
</message>
<message>
<source>plan: {text}</source>
<translation>Plan: {text}</translation>
</message>
<message>
<source>Survey: door shut</source>
<translation>Messung: Tür geschlossen</translation>
</message>
<message>
<source>Survey: board</source>
<translation>Messung: Lochbrett</translation>
</message>
<message>
<source>Skipped: {step}</source>
<translation>Übersprungen: {step}</translation>
</message>
<message>
<source>Survey: hanging height</source>
<translation>Messung: Hängehöhe</translation>
</message>
<message>
<source>Survey: warm-up</source>
<translation>Messung: Warmlaufen</translation>
</message>
<message>
<source>{minutes}:{seconds} min, begin</source>
<translation>{minutes}:{seconds} min, beginnen</translation>
</message>
<message>
<source>Made of</source>
<translation>Besteht aus</translation>
</message>
<message>
<source>Grid of holes</source>
<translation>Lochraster</translation>
</message>
<message>
<source>Rows</source>
<translation>Reihen</translation>
</message>
<message>
<source>Columns</source>
<translation>Spalten</translation>
</message>
<message>
<source>columns</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Margin</source>
<translation>Rand</translation>
</message>
<message>
<source>Strip along the walls that stays without holes.</source>
<translation>Streifen entlang der Wände, der ohne Löcher bleibt.</translation>
</message>
<message>
<source>Hole diameter</source>
<translation>Lochdurchmesser</translation>
</message>
<message>
<source>So wide that the sensor just fits: it then stands at the same place each time.</source>
<translation>So weit, dass der Sensor gerade passt: Er steht dann jedes Mal an derselben Stelle.</translation>
</message>
<message>
<source>Holes lie</source>
<translation>Löcher liegen</translation>
</message>
<message>
<source>Centres of equal cells: the mean over the holes is the mean over the space. From edge to edge: the outer holes lie on the margin, where the light is weakest.</source>
<translation>Mitten gleicher Zellen: Das Mittel über die Löcher ist das Mittel über den Raum. Von Rand zu Rand: Die äußeren Löcher liegen auf dem Rand, wo das Licht am schwächsten ist.</translation>
</message>
<message>
<source>By EN 12464-1</source>
<translation>Nach EN 12464-1</translation>
</message>
<message>
<source>Take all places in</source>
<translation>Alle Stellen aufnehmen</translation>
</message>
<message>
<source>Undo every place that was left out.</source>
<translation>Jedes Auslassen einer Stelle zurücknehmen.</translation>
</message>
<message>
<source>Click a hole to leave it out, a cross to take it in again; or step to it with the arrow keys and press Space.</source>
<translation>Auf ein Loch klicken, um es auszulassen, auf ein Kreuz, um es wieder aufzunehmen; oder mit den Pfeiltasten hingehen und die Leertaste drücken.</translation>
</message>
<message>
<source>On paper</source>
<translation>Auf Papier</translation>
</message>
<message>
<source>Paper</source>
<translation>Papier</translation>
</message>
<message>
<source>Black but for the holes</source>
<translation>Schwarz bis auf die Löcher</translation>
</message>
<message>
<source>Much ink, but it throws back little light.</source>
<translation>Viel Tinte, aber es wirft wenig Licht zurück.</translation>
</message>
<message>
<source>Board and recording sheet…</source>
<translation>Lochbrett und Messblatt…</translation>
</message>
<message>
<source>A PDF at true size: sheets to be joined at their marks, a bar that shows whether the printer kept the size, and a sheet to write the readings on.</source>
<translation>Ein PDF in wahrer Größe: Blätter, die an ihren Marken zusammengefügt werden, ein Balken, der zeigt, ob der Drucker die Größe gehalten hat, und ein Blatt für die Messwerte.</translation>
</message>
<message>
<source>Survey grid: {inside}</source>
<translation>Messraster: {inside}</translation>
</message>
<message>
<source>sheet</source>
<translation>Blatt</translation>
</message>
<message>
<source>sheets</source>
<translation>Blätter</translation>
</message>
<message>
<source>the recording sheet comes</source>
<translation>das Messblatt kommt hinzu</translation>
</message>
<message>
<source>overview and recording sheet come</source>
<translation>Übersicht und Messblatt kommen hinzu</translation>
</message>
<message>
<source>The board takes {count} {few} of paper; {more} on top.</source>
<translation>Das Lochbrett braucht {count} {few} Papier; {more}.</translation>
</message>
<message>
<source>{count} hole{value}</source>
<translation>{count} Messstelle{value}</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>, the closest {nearest} apart</source>
<translation>, die nächsten {nearest} auseinander</translation>
</message>
<message>
<source>{said}. They came with a table; a change of the grid lays them out anew.</source>
<translation>{said}. Sie kamen mit einer Tabelle; eine Änderung des Rasters legt sie neu an.</translation>
</message>
<message>
<source>{said}, {left_out} left out.</source>
<translation>{said}, {left_out} ausgelassen.</translation>
</message>
<message>
<source>{said}.</source>
<translation>{said}.</translation>
</message>
<message>
<source>Survey grid: spacing</source>
<translation>Messraster: Abstand</translation>
</message>
<message>
<source>Survey grid by EN 12464-1</source>
<translation>Messraster nach EN 12464-1</translation>
</message>
<message>
<source>{value} board.pdf</source>
<translation>{value} Lochbrett.pdf</translation>
</message>
<message>
<source>survey</source>
<translation>Messung</translation>
</message>
<message>
<source>Board and recording sheet</source>
<translation>Lochbrett und Messblatt</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.calibrate_panel</name>
<message>
<source>As it is</source>
<translation>Wie sie ist</translation>
</message>
<message>
<source>as it is</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>How wide its beam is</source>
<translation>Wie weit die Abstrahlung ist</translation>
</message>
<message>
<source>exponent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A free polar curve</source>
<translation>Eine freie Polarkurve</translation>
</message>
<message>
<source>curve</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A survey in open air tells the lamp; one in a lined space tells the lining, with the lamp taken from the first. The gain of each meter is always unknown within its uncertainty.</source>
<translation>Eine Messung in freier Luft verrät die Lampe; eine in einem ausgekleideten Raum verrät die Auskleidung, mit der Lampe aus der ersten. Die Empfindlichkeit jedes Messgeräts ist stets nur bis auf ihre Unsicherheit bekannt.</translation>
</message>
<message>
<source>Surveys to fit together</source>
<translation>Gemeinsam anzupassende Messungen</translation>
</message>
<message>
<source>Reflectance of</source>
<translation>Reflexionsgrad von</translation>
</message>
<message>
<source>Mirror-like share of</source>
<translation>Spiegelanteil von</translation>
</message>
<message>
<source>Photon flux of the lamps</source>
<translation>Photonenfluss der Lampen</translation>
</message>
<message>
<source>Place of the lamps, sideways</source>
<translation>Platz der Lampen, seitlich</translation>
</message>
<message>
<source>Calibrate</source>
<translation>Abgleichen</translation>
</message>
<message>
<source>Fit all chosen surveys together.</source>
<translation>Alle gewählten Messungen gemeinsam anpassen.</translation>
</message>
<message>
<source>Leave one out</source>
<translation>Eine auslassen</translation>
</message>
<message>
<source>Predict each survey from the others, and say how well it went.</source>
<translation>Jede Messung aus den anderen vorhersagen und sagen, wie gut es ging.</translation>
</message>
<message>
<source>Progress of the fit</source>
<translation>Fortschritt der Anpassung</translation>
</message>
<message>
<source>Cancel</source>
<translation>Abbrechen</translation>
</message>
<message>
<source>Give the fit up; nothing changes.</source>
<translation>Die Anpassung aufgeben; nichts ändert sich.</translation>
</message>
<message>
<source>Surveys</source>
<translation>Messungen</translation>
</message>
<message>
<source>What may change</source>
<translation>Was sich ändern darf</translation>
</message>
<message>
<source>Lamps' profile</source>
<translation>Profil der Lampen</translation>
</message>
<message>
<source>{key}/{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name} (open air)</source>
<translation>{name} (freie Luft)</translation>
</message>
<message>
<source>{name} ({name2})</source>
<translation>{name} ({name2})</translation>
</message>
<message>
<source>survey-fit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The calibration</source>
<translation>Der Abgleich</translation>
</message>
<message>
<source>Use calibration in the plan</source>
<translation>Abgleich im Plan verwenden</translation>
</message>
<message>
<source>The plan has the calibrated lamps and linings</source>
<translation>Der Plan hat die abgeglichenen Lampen und Auskleidungen</translation>
</message>
<message>
<source>Kept in the library: {join}.</source>
<translation>In der Bibliothek behalten: {join}.</translation>
</message>
<message>
<source>Kept in the library</source>
<translation>In der Bibliothek behalten</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.calibration</name>
<message>
<source>exponent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>as it is</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>key</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The plan has changed since this fit; calibrate again before it is used in the plan.</source>
<translation>Der Plan hat sich seit dieser Anpassung geändert; vor der Verwendung im Plan neu abgleichen.</translation>
</message>
<message>
<source>Use in the plan</source>
<translation>Im Plan verwenden</translation>
</message>
<message>
<source>Use in the plan all the same</source>
<translation>Trotzdem im Plan verwenden</translation>
</message>
<message>
<source>The plan now has these values; undo takes them back.</source>
<translation>Der Plan hat jetzt diese Werte; Rückgängig nimmt sie zurück.</translation>
</message>
<message>
<source>Correlation of the values</source>
<translation>Korrelation der Werte</translation>
</message>
<message>
<source>How they hang together</source>
<translation>Wie sie zusammenhängen</translation>
</message>
<message>
<source>What the fit says</source>
<translation>Was die Anpassung sagt</translation>
</message>
<message>
<source>All of it in words</source>
<translation>Alles in Worten</translation>
</message>
<message>
<source>Each survey predicted from the others</source>
<translation>Jede Messung aus den anderen vorhergesagt</translation>
</message>
<message>
<source>Lamps and linings of the plan get these values; one undo step.</source>
<translation>Lampen und Auskleidungen des Plans bekommen diese Werte; ein Schritt zum Rückgängigmachen.</translation>
</message>
<message>
<source>Keep in the library</source>
<translation>In der Bibliothek behalten</translation>
</message>
<message>
<source>Under a name with today's date, with their standard errors.</source>
<translation>Unter einem Namen mit dem heutigen Datum, mit ihren Standardfehlern.</translation>
</message>
<message>
<source>Found</source>
<translation>Gefunden</translation>
</message>
<message>
<source>{value}  {label}</source>
<translation>{value}  {label}</translation>
</message>
<message>
<source>{correlation}</source>
<translation>{correlation}</translation>
</message>
<message>
<source>{first} with {second}</source>
<translation>{first} mit {second}</translation>
</message>
<message>
<source>{k}: {label}</source>
<translation>{k}: {label}</translation>
</message>
<message>
<source>{label}: {text}</source>
<translation>{label}: {text}</translation>
</message>
<message>
<source>{said}: {percent} of the variance</source>
<translation>{said}: {percent} der Varianz</translation>
</message>
<message>
<source>not told by these readings</source>
<translation>aus diesen Messwerten nicht zu sagen</translation>
</message>
<message>
<source>at {value} {reach}{gap}{unit}, at its bound</source>
<translation>{value} {reach}{gap}{unit}, an der Grenze</translation>
</message>
<message>
<source>least</source>
<translation>mindestens</translation>
</message>
<message>
<source>most</source>
<translation>höchstens</translation>
</message>
<message>
<source>{value}{gap}{unit}, {low} to {high}</source>
<translation>{value}{gap}{unit}, {low} bis {high}</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.compare_panel</name>
<message>
<source>Mean of the holes</source>
<translation>Mittel der Löcher</translation>
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Darkest hole</source>
<translation>Dunkelstes Loch</translation>
</message>
<message>
<source>min</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Brightest hole</source>
<translation>Hellstes Loch</translation>
</message>
<message>
<source>max</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A comparison needs readings of two surveys. Copy this survey to the same board, change one thing - the lining, the height - and read again.</source>
<translation>Ein Vergleich braucht Messwerte aus zwei Messungen. Diese Messung auf dasselbe Lochbrett kopieren, eine Sache ändern – die Auskleidung, die Höhe – und noch einmal messen.</translation>
</message>
<message>
<source>Set against</source>
<translation>Verglichen mit</translation>
</message>
<message>
<source>The map shows the survey chosen above over this one, hole by hole.</source>
<translation>Die Karte zeigt die oben gewählte Messung geteilt durch diese, Loch für Loch.</translation>
</message>
<message>
<source>Ratio of the two surveys</source>
<translation>Verhältnis der beiden Messungen</translation>
</message>
<message>
<source>What the ratio means</source>
<translation>Was das Verhältnis bedeutet</translation>
</message>
<message>
<source>Ranking</source>
<translation>Rangfolge</translation>
</message>
<message>
<source>Ranked by</source>
<translation>Geordnet nach</translation>
</message>
<message>
<source>Base, counts as 1</source>
<translation>Basis, zählt als 1</translation>
</message>
<message>
<source>Can the readings tell them apart?</source>
<translation>Können die Messwerte sie unterscheiden?</translation>
</message>
<message>
<source>Verdicts</source>
<translation>Urteile</translation>
</message>
<message>
<source>These two share no hole with readings in both.</source>
<translation>Diese beiden haben kein Loch gemeinsam, in dem beide Messwerte haben.</translation>
</message>
<message>
<source>{ratio} ± {band}</source>
<translation>{ratio} ± {band}</translation>
</message>
<message>
<source>Mean over {holes} holes with its 95 % interval; single holes differ by {spread} (standard deviation).</source>
<translation>Mittel über {holes} Löcher mit 95-%-Intervall; einzelne Löcher streuen um {spread} (Standardabweichung).</translation>
</message>
<message>
<source>Mean error</source>
<translation>Mittlerer Fehler</translation>
</message>
<message>
<source>Bias</source>
<translation>Versatz</translation>
</message>
<message>
<source>rms</source>
<translation>rms</translation>
</message>
<message>
<source>r²</source>
<translation>r²</translation>
</message>
<message>
<source>Mean of the sizes of the differences, whichever way they go.</source>
<translation>Mittel der Beträge der Differenzen, gleich in welche Richtung.</translation>
</message>
<message>
<source>Mean of the differences, measured minus estimated: what all readings share.</source>
<translation>Mittel der Differenzen, gemessen minus geschätzt: was allen Messwerten gemeinsam ist.</translation>
</message>
<message>
<source>Root of the mean square of the differences: large ones count more.</source>
<translation>Wurzel aus dem mittleren Quadrat der Differenzen: große zählen mehr.</translation>
</message>
<message>
<source>Share of the variation from hole to hole that the estimate follows.</source>
<translation>Anteil der Schwankung von Loch zu Loch, dem die Schätzung folgt.</translation>
</message>
<message>
<source>The line is perfect agreement, the wedge what the meter's own uncertainty explains.</source>
<translation>Die Linie ist völlige Übereinstimmung, der Keil das, was die Unsicherheit des Messgeräts erklärt.</translation>
</message>
<message>
<source>What the figures mean</source>
<translation>Was die Werte bedeuten</translation>
</message>
<message>
<source>Try what may be wrong</source>
<translation>Mögliche Fehler prüfen</translation>
</message>
<message>
<source>Mirrored, another order, lamp height, door, board: the usual mistakes, one by one.</source>
<translation>Gespiegelt, andere Reihenfolge, Lampenhöhe, Tür, Lochbrett: die üblichen Fehler, einer nach dem anderen.</translation>
</message>
<message>
<source>{r2}</source>
<translation>{r2}</translation>
</message>
<message>
<source>{name}: {text}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Take readings first; then they are set against the estimate here.</source>
<translation>Zuerst messen; dann stehen die Messwerte hier neben der Schätzung.</translation>
</message>
<message>
<source>As soon as the estimate is there, the readings are set against it here.</source>
<translation>Sobald die Schätzung da ist, stehen die Messwerte hier gegen sie.</translation>
</message>
<message>
<source>{value} {PPFD_UNIT}  ({value2} %)</source>
<translation>{value} {PPFD_UNIT}  ({value2} %)</translation>
</message>
<message>
<source>hole {hole} (reads {mean}, about {value} expected)</source>
<translation>Loch {hole} (gemessen {mean}, erwartet etwa {value})</translation>
</message>
<message>
<source> and {more} more</source>
<translation> und noch {more}</translation>
</message>
<message>
<source>Far off {value} neighbours: {join}{tail}. {value2} kept; read again if you can.</source>
<translation>Weit ab von {value} Nachbarn: {join}{tail}. {value2} behalten; wenn möglich neu messen.</translation>
</message>
<message>
<source>its</source>
<translation>seinen</translation>
</message>
<message>
<source>their</source>
<translation>ihren</translation>
</message>
<message>
<source>It is</source>
<translation>Es wird</translation>
</message>
<message>
<source>They are</source>
<translation>Sie werden</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.desk</name>
<message>
<source>The plan's own canopy</source>
<translation>Das eigene Blätterdach</translation>
</message>
<message>
<source>Lay out a survey grid</source>
<translation>Messraster anlegen</translation>
</message>
<message>
<source>Copy survey {name}</source>
<translation>Messung {name} kopieren</translation>
</message>
<message>
<source>Remove survey {name}</source>
<translation>Messung {name} entfernen</translation>
</message>
<message>
<source>excluded</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value} place {place}</source>
<translation>Platz {place} {value}</translation>
</message>
<message>
<source>Take in</source>
<translation>aufnehmen</translation>
</message>
<message>
<source>Leave out</source>
<translation>auslassen</translation>
</message>
<message>
<source>Read hole {hole}</source>
<translation>Loch {hole} messen</translation>
</message>
<message>
<source>{value} hole {hole}</source>
<translation>Loch {hole} {value}</translation>
</message>
<message>
<source>Set aside</source>
<translation>Beiseitelegen</translation>
</message>
<message>
<source>Take back in</source>
<translation>Wieder mitzählen</translation>
</message>
<message>
<source>Readings of hole {hole}</source>
<translation>Messwerte von Loch {hole}</translation>
</message>
<message>
<source>Clear hole {hole}</source>
<translation>Loch {hole} leeren</translation>
</message>
<message>
<source>Take back a reading of hole {_hole}</source>
<translation>Messwert von Loch {_hole} zurücknehmen</translation>
</message>
<message>
<source>&amp;Board</source>
<translation>&amp;Lochbrett</translation>
</message>
<message>
<source>&amp;Record</source>
<translation>&amp;Protokoll</translation>
</message>
<message>
<source>Readin&amp;gs</source>
<translation>&amp;Messwerte</translation>
</message>
<message>
<source>&amp;Overlay</source>
<translation>Überla&amp;gern</translation>
</message>
<message>
<source>&amp;Compare</source>
<translation>&amp;Vergleichen</translation>
</message>
<message>
<source>C&amp;alibrate</source>
<translation>Abgle&amp;ichen</translation>
</message>
<message>
<source>Survey</source>
<translation>Messung</translation>
</message>
<message>
<source>New grid</source>
<translation>Neues Raster</translation>
</message>
<message>
<source>Lay out the board of another survey.</source>
<translation>Das Lochbrett einer weiteren Messung anlegen.</translation>
</message>
<message>
<source>Copy</source>
<translation>Kopieren</translation>
</message>
<message>
<source>Another survey on the same board and under the same conditions, to be read.</source>
<translation>Noch eine Messung mit demselben Lochbrett und denselben Bedingungen, die gemessen werden soll.</translation>
</message>
<message>
<source>Remove</source>
<translation>Entfernen</translation>
</message>
<message>
<source>Take this survey out of the plan (undo brings it back).</source>
<translation>Diese Messung aus dem Plan nehmen (Rückgängig holt sie zurück).</translation>
</message>
<message>
<source>Paste</source>
<translation>Einfügen</translation>
</message>
<message>
<source>Readings copied from a spreadsheet (Ctrl+V).</source>
<translation>Messwerte aus einer Tabellenkalkulation (Strg+V).</translation>
</message>
<message>
<source>Import…</source>
<translation>Importieren…</translation>
</message>
<message>
<source>Readings from a CSV, TSV, XLSX or ODS file.</source>
<translation>Messwerte aus einer CSV-, TSV-, XLSX- oder ODS-Datei.</translation>
</message>
<message>
<source>Steps of a survey</source>
<translation>Schritte einer Messung</translation>
</message>
<message>
<source>What the survey says</source>
<translation>Was die Messung sagt</translation>
</message>
<message>
<source>Measure the light, and lay it over the estimate</source>
<translation>Das Licht messen und über die Schätzung legen</translation>
</message>
<message>
<source>Put the sensor into every hole of the board, level and at the same height each time. Let the lamp warm up for 20 minutes first, and stand where you throw no shadow. Averages over many holes tell linings apart far better than a single spot.</source>
<translation>Den Sensor in jedes Loch des Lochbretts stecken, waagerecht und immer gleich hoch. Die Lampe vorher 20 Minuten warmlaufen lassen und so stehen, dass kein Schatten fällt. Mittel über viele Löcher unterscheiden Auskleidungen viel besser als ein einzelner Punkt.</translation>
</message>
<message>
<source>Lay out a grid</source>
<translation>Raster anlegen</translation>
</message>
<message>
<source>A board of holes for this space, to be printed.</source>
<translation>Ein Lochbrett für diesen Raum, zum Drucken.</translation>
</message>
<message>
<source>Paste readings</source>
<translation>Messwerte einfügen</translation>
</message>
<message>
<source>A table copied from a spreadsheet (Ctrl+V).</source>
<translation>Eine aus einer Tabellenkalkulation kopierte Tabelle (Strg+V).</translation>
</message>
<message>
<source>or import a CSV, TSV, XLSX or ODS file…</source>
<translation>oder eine CSV-, TSV-, XLSX- oder ODS-Datei importieren…</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.diagnosis</name>
<message>
<source>Trying what may have gone wrong: mirrored, another height, a door, one hole …</source>
<translation>Mögliche Fehler werden geprüft: gespiegelt, andere Höhe, eine Tür, ein Loch …</translation>
</message>
<message>
<source>The survey has changed since; try again.</source>
<translation>Die Messung hat sich inzwischen geändert; bitte noch einmal prüfen.</translation>
</message>
<message>
<source>The lamp has changed since; try again.</source>
<translation>Die Lampe wurde inzwischen geändert; noch einmal versuchen.</translation>
</message>
<message>
<source>What may have gone wrong</source>
<translation>Was falsch gelaufen sein kann</translation>
</message>
<message>
<source>Progress of trying</source>
<translation>Fortschritt der Prüfung</translation>
</message>
<message>
<source>Cancel</source>
<translation>Abbrechen</translation>
</message>
<message>
<source>Stop trying.</source>
<translation>Prüfung abbrechen.</translation>
</message>
<message>
<source>Put it right; undo takes it back.</source>
<translation>Richtigstellen; Rückgängig nimmt es zurück.</translation>
</message>
<message>
<source>What else was tried</source>
<translation>Was sonst geprüft wurde</translation>
</message>
<message>
<source>{remedy}: {in_unit}</source>
<translation>{remedy}: {in_unit}</translation>
</message>
<message>
<source>{times} × better</source>
<translation>{times} × besser</translation>
</message>
<message>
<source>survey-diagnosis</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{remedy}: {name}</source>
<translation>{remedy}: {name}</translation>
</message>
<message>
<source>Set beam angle</source>
<translation>Abstrahlwinkel setzen</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.drawing</name>
<message>
<source>at x {x}, y {y}</source>
<translation>bei x {x}, y {y}</translation>
</message>
<message>
<source>, far off its neighbours</source>
<translation>, weit ab von seinen Nachbarn</translation>
</message>
<message>
<source>read</source>
<translation>gelesen</translation>
</message>
<message>
<source>Hole {part}</source>
<translation>Loch {part}</translation>
</message>
<message>
<source>Survey drawing</source>
<translation>Zeichnung der Messung</translation>
</message>
<message>
<source>Second survey drawing</source>
<translation>Zweite Zeichnung der Messung</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.entry_panel</name>
<message>
<source>Enter keeps the reading and goes on; several with spaces between them are all kept. Enter on an empty line passes the hole over, Backspace goes back, Delete takes the last reading of this hole out.</source>
<translation>Die Eingabetaste behält den Messwert und geht weiter; mehrere mit Leerzeichen dazwischen werden alle behalten. Die Eingabetaste in leerer Zeile übergeht das Loch, die Rücktaste geht zurück, Entf löscht den letzten Messwert dieses Lochs.</translation>
</message>
<message>
<source>All holes are read. To read one again, go to it; hole 1 again shows the drift.</source>
<translation>Alle Löcher sind gemessen. Um eines neu zu messen, dorthin gehen; Loch 1 noch einmal zeigt die Drift.</translation>
</message>
<message>
<source>Reading</source>
<translation>Messwert</translation>
</message>
<message>
<source>'{part}' is not a reading; write a number such as 212 or 98,5.</source>
<translation>„{part}“ ist kein Messwert; eine Zahl wie 212 oder 98,5 schreiben.</translation>
</message>
<message>
<source>{beyond_sun}; check the decimal mark, and under Record whether the meter shows lux.</source>
<translation>{beyond_sun}; das Dezimalzeichen prüfen und unter Protokoll, ob das Messgerät Lux anzeigt.</translation>
</message>
<message>
<source>Hole at hand</source>
<translation>Aktuelles Loch</translation>
</message>
<message>
<source>Readings of this hole</source>
<translation>Messwerte dieses Lochs</translation>
</message>
<message>
<source>Back</source>
<translation>Zurück</translation>
</message>
<message>
<source>The hole before (Backspace on an empty line).</source>
<translation>Das Loch davor (Rücktaste in leerer Zeile).</translation>
</message>
<message>
<source>Next unread</source>
<translation>Nächstes offene</translation>
</message>
<message>
<source>The next hole without a reading.</source>
<translation>Das nächste Loch ohne Messwert.</translation>
</message>
<message>
<source>Hole 1 again</source>
<translation>Loch 1 noch einmal</translation>
</message>
<message>
<source>Read once more at the end, it shows the drift.</source>
<translation>Zum Schluss noch einmal messen, das zeigt die Drift.</translation>
</message>
<message>
<source>Set aside</source>
<translation>Beiseitelegen</translation>
</message>
<message>
<source>The readings of this hole are kept, but count in no figure.</source>
<translation>Die Messwerte dieses Lochs bleiben erhalten, zählen aber nirgends mit.</translation>
</message>
<message>
<source>All {len} holes read</source>
<translation>Alle {len} Löcher gemessen</translation>
</message>
<message>
<source>Hole {hole} of {len}</source>
<translation>Loch {hole} von {len}</translation>
</message>
<message>
<source>lux, {format_number} to the {PPFD_UNIT}</source>
<translation>Lux, {format_number} je {PPFD_UNIT}</translation>
</message>
<message>
<source>Take back in</source>
<translation>Wieder mitzählen</translation>
</message>
<message>
<source>{text} hole {hole}</source>
<translation>{text}: Loch {hole}</translation>
</message>
<message>
<source>{text}. {text2} {KEYS}</source>
<translation>{text}. {text2} {KEYS}</translation>
</message>
<message>
<source>decimal mark</source>
<translation>Dezimalzeichen</translation>
</message>
<message>
<source>sensor and the lamp</source>
<translation>Sensor und Lampe</translation>
</message>
<message>
<source>Beside it was read {low} to {high}: check the {what}. Enter once more keeps it as it is.</source>
<translation>Daneben wurde {low} bis {high} gemessen: {what} prüfen. Nochmals die Eingabetaste behält den Wert.</translation>
</message>
<message>
<source>This hole has no reading to take back.</source>
<translation>Dieses Loch hat keinen Messwert zum Zurücknehmen.</translation>
</message>
<message>
<source>x {x_text}, y {y_text}</source>
<translation>x {x_text}, y {y_text}</translation>
</message>
<message>
<source>At {at}.</source>
<translation>Bei {at}.</translation>
</message>
<message>
<source>Row {place} from the near side, column {place2} from the left; {at}.</source>
<translation>Reihe {place} von der nahen Seite, Spalte {place2} von links; {at}.</translation>
</message>
<message>
<source>Set aside: {listed}. {value}</source>
<translation>Beiseitegelegt: {listed}. {value}</translation>
</message>
<message>
<source>Nothing else read here.</source>
<translation>Sonst hier nichts gemessen.</translation>
</message>
<message>
<source>Nothing read here yet.</source>
<translation>Hier noch nichts gemessen.</translation>
</message>
<message>
<source>Read here: {listed}.</source>
<translation>Hier gemessen: {listed}.</translation>
</message>
<message>
<source>Read here: {listed}. Mean {format_number}, from lowest to highest {percent} %.</source>
<translation>Hier gemessen: {listed}. Mittel {format_number}, vom kleinsten zum größten {percent} %.</translation>
</message>
<message>
<source>Hole</source>
<translation>Loch</translation>
</message>
<message>
<source>x</source>
<translation>x</translation>
</message>
<message>
<source>y</source>
<translation>y</translation>
</message>
<message>
<source>Readings</source>
<translation>Messwerte</translation>
</message>
<message>
<source>Mean</source>
<translation>Mittel</translation>
</message>
<message>
<source>Spread</source>
<translation>Streuung</translation>
</message>
<message>
<source>{value}{hole}</source>
<translation>{value}{hole}</translation>
</message>
<message>
<source>({format_number})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>± {format_number}</source>
<translation>± {format_number}</translation>
</message>
<message>
<source>Far off its neighbours, which lead to expect about {expected}. Read it again if you can, or set it aside; until then it counts as it is.</source>
<translation>Weit ab von den Nachbarn, die etwa {expected} erwarten lassen. Wenn möglich neu messen oder beiseitelegen; bis dahin zählt der Wert, wie er ist.</translation>
</message>
<message>
<source>Readings by hole</source>
<translation>Messwerte nach Löchern</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.page</name>
<message>
<source>'{name}' has {total} holes and no readings yet: print the board, put the sensor into each hole, and type what it shows.</source>
<translation>„{name}“ hat {total} Löcher und noch keine Messwerte: das Lochbrett drucken, den Sensor in jedes Loch stecken und eintippen, was er anzeigt.</translation>
</message>
<message>
<source>{outlier_words} </source>
<translation>{outlier_words} </translation>
</message>
<message>
<source>all {total} holes</source>
<translation>alle {total} Löcher</translation>
</message>
<message>
<source>{read} of {total} holes</source>
<translation>{read} von {total} Löchern</translation>
</message>
<message>
<source>'{name}': mean {ppfd} {PPFD_UNIT} ± {doubt} % over {holes}, from {ppfd2} to {ppfd3} (min / mean {percent}).</source>
<translation>„{name}“: Mittel {ppfd} {PPFD_UNIT} ± {doubt} % über {holes}, von {ppfd2} bis {ppfd3} (Min/Mittel {percent}).</translation>
</message>
<message>
<source> {words}</source>
<translation> {words}</translation>
</message>
<message>
<source>{first}{said}</source>
<translation>{first}{said}</translation>
</message>
<message>
<source>survey-table</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>These readings cannot be used</source>
<translation>Diese Messwerte sind nicht verwendbar</translation>
</message>
<message>
<source>Survey: printed board</source>
<translation>Messung: gedrucktes Lochbrett</translation>
</message>
<message>
<source>Wrote {name}; print it at 100 %, without fitting</source>
<translation>{name} geschrieben; mit 100 % drucken, ohne Anpassen</translation>
</message>
<message>
<source>The estimate below the readings is being computed</source>
<translation>Die Schätzung unter den Messwerten wird berechnet</translation>
</message>
<message>
<source>These holes came with a table; change the grid to lay out anew.</source>
<translation>Diese Löcher kamen mit einer Tabelle; das Raster ändern, um sie neu anzulegen.</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.pictures</name>
<message>
<source>Survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>survey-light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>survey-summary</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The light of this survey</source>
<translation>Das Licht dieser Messung</translation>
</message>
<message>
<source>{len} holes, in the order they are visited</source>
<translation>{len} Löcher in der Reihenfolge des Messens</translation>
</message>
<message>
<source>The board of '{name}': {len} holes, {len2} places left out; hole {hole} is highlighted.</source>
<translation>Das Lochbrett von „{name}“: {len} Löcher, {len2} Plätze ausgelassen; Loch {hole} ist hervorgehoben.</translation>
</message>
<message>
<source>hole {hole} comes next</source>
<translation>Loch {hole} ist das nächste</translation>
</message>
<message>
<source>hole {hole} is at hand</source>
<translation>Loch {hole} ist an der Reihe</translation>
</message>
<message>
<source>{len} of {len2} holes read; {said}</source>
<translation>{len} von {len2} Löchern gemessen; {said}</translation>
</message>
<message>
<source>'{name}': {len} of {len2} holes read; {said}.</source>
<translation>„{name}“: {len} von {len2} Löchern gemessen; {said}.</translation>
</message>
<message>
<source>Estimate, readings in rings on the same scale</source>
<translation>Schätzung, Messwerte in Ringen mit derselben Skala</translation>
</message>
<message>
<source>The estimate under the conditions of '{name}', its readings on it.</source>
<translation>Die Schätzung unter den Bedingungen von „{name}“, darauf die Messwerte.</translation>
</message>
<message>
<source>Estimate, on the same scale</source>
<translation>Schätzung, mit derselben Skala</translation>
</message>
<message>
<source>{label}; grey is within the meter's uncertainty</source>
<translation>{label}; Grau liegt in der Unsicherheit des Messgeräts</translation>
</message>
<message>
<source>measured over estimated</source>
<translation>gemessen durch geschätzt</translation>
</message>
<message>
<source>measured minus estimated</source>
<translation>gemessen minus geschätzt</translation>
</message>
<message>
<source>{capital}</source>
<translation>{capital}</translation>
</message>
<message>
<source>{caption}. Values at {len} holes.</source>
<translation>{caption}. Werte an {len} Löchern.</translation>
</message>
<message>
<source>Three holes at least, not in one line</source>
<translation>Mindestens drei Löcher, nicht auf einer Linie</translation>
</message>
<message>
<source>ratio</source>
<translation>Verhältnis</translation>
</message>
<message>
<source>'{name}' over '{name2}'; grey is within noise and placement</source>
<translation>„{name}“ durch „{name2}“; Grau liegt in Rauschen und Platzierung</translation>
</message>
<message>
<source>before</source>
<translation>vorher</translation>
</message>
<message>
<source>after</source>
<translation>nachher</translation>
</message>
<message>
<source>measured over predicted</source>
<translation>gemessen durch berechnet</translation>
</message>
<message>
<source>{when}, {value} % rms: measured over predicted, '{name}'</source>
<translation>{when}, {value} % rms: gemessen durch berechnet, „{name}“</translation>
</message>
<message>
<source>{value}</source>
<translation>{value}</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.record_panel</name>
<message>
<source>warm_up_minutes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min</source>
<translation>min</translation>
</message>
<message>
<source>noise</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sensor_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>as in the plan</source>
<translation>wie im Plan</translation>
</message>
<message>
<source>How far what is written down may be off, either way. A calibration carries all of it into its errors; 0 says that it is certain.</source>
<translation>Wie weit das Notierte abweichen kann, nach oben oder unten. Ein Abgleich trägt alles in seine Fehler; 0 heißt, dass es sicher ist.</translation>
</message>
<message>
<source>Lamp height</source>
<translation>Lampenhöhe</translation>
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>As measured with a tape.</source>
<translation>Wie mit dem Maßband gemessen.</translation>
</message>
<message>
<source>Sensor height</source>
<translation>Sensorhöhe</translation>
</message>
<message>
<source>Of its face over the board, in all surveys of the meter.</source>
<translation>Der Sensorfläche über dem Lochbrett, in allen Messungen des Messgeräts.</translation>
</message>
<message>
<source>Board</source>
<translation>Lochbrett</translation>
</message>
<message>
<source>board_reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Reflectance of the board.</source>
<translation>Reflexionsgrad des Lochbretts.</translation>
</message>
<message>
<source>Output</source>
<translation>Dimmung</translation>
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lamps hung, switched on and warmed up anew.</source>
<translation>Lampen neu aufgehängt, eingeschaltet und warmgelaufen.</translation>
</message>
<message>
<source>Drift</source>
<translation>Drift</translation>
</message>
<message>
<source>drift</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Change of the lamps from the first reading to the last.</source>
<translation>Änderung der Lampen vom ersten bis zum letzten Messwert.</translation>
</message>
<message>
<source>Door</source>
<translation>Tür</translation>
</message>
<message>
<source>door</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Part of the door's wall that may have stood open.</source>
<translation>Teil der Türwand, der offen gestanden haben kann.</translation>
</message>
<message>
<source>Cosine</source>
<translation>Kosinus</translation>
</message>
<message>
<source>cosine</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The meter on light from all sides, against light from the lamps.</source>
<translation>Das Messgerät bei Licht von allen Seiten, gegenüber Licht von den Lampen.</translation>
</message>
<message>
<source>Name</source>
<translation>Name</translation>
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Name survey</source>
<translation>Messung benennen</translation>
</message>
<message>
<source>Date</source>
<translation>Datum</translation>
</message>
<message>
<source>Year, month, day: 2026-03-21.</source>
<translation>Jahr, Monat, Tag: 2026-03-21.</translation>
</message>
<message>
<source>Conditions</source>
<translation>Bedingungen</translation>
</message>
<message>
<source>Meter</source>
<translation>Messgerät</translation>
</message>
<message>
<source>How sure is it?</source>
<translation>Wie sicher ist es?</translation>
</message>
<message>
<source>Note</source>
<translation>Notiz</translation>
</message>
<message>
<source>What was special</source>
<translation>Besonderheiten</translation>
</message>
<message>
<source>note</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Survey note</source>
<translation>Notiz zur Messung</translation>
</message>
<message>
<source>Lies on</source>
<translation>Liegt auf</translation>
</message>
<message>
<source>Which canopy was read. Holes that hold no reading yet are laid out anew over it. Hanging heights stay those above the plan's own canopy.</source>
<translation>Auf welchem Blätterdach gemessen wurde. Löcher, die noch keinen Messwert haben, werden darüber neu verteilt. Hängehöhen bleiben die über dem eigenen Blätterdach des Plans.</translation>
</message>
<message>
<source>Walls</source>
<translation>Wände</translation>
</message>
<message>
<source>What was on the walls during this survey. In open air: no walls and no ceiling.</source>
<translation>Was bei dieser Messung an den Wänden war. Im Freien: keine Wände und keine Decke.</translation>
</message>
<message>
<source>Lamp output</source>
<translation>Dimmung</translation>
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Survey: board</source>
<translation>Messung: Lochbrett</translation>
</message>
<message>
<source>Its reflectance</source>
<translation>Sein Reflexionsgrad</translation>
</message>
<message>
<source>as the canopy it lies on</source>
<translation>wie das Blätterdach darunter</translation>
</message>
<message>
<source>Of a board that fills the plane. White card returns most of the light to the walls and reads higher than a dark canopy would.</source>
<translation>Eines Lochbretts, das die Ebene füllt. Weiße Pappe wirft das meiste Licht zurück an die Wände und gibt höhere Werte, als ein dunkles Blätterdach es täte.</translation>
</message>
<message>
<source>Warm-up</source>
<translation>Warmlaufen</translation>
</message>
<message>
<source>not noted</source>
<translation>nicht notiert</translation>
</message>
<message>
<source>Lamps fade by some per cent while they warm up; wait 20 minutes or more.</source>
<translation>Lampen werden beim Warmlaufen um einige Prozent schwächer; 20 Minuten oder länger warten.</translation>
</message>
<message>
<source>Meter's name</source>
<translation>Name des Messgeräts</translation>
</message>
<message>
<source>Surveys whose meters bear one name share its error, which drops out of their ratio.</source>
<translation>Messungen, deren Messgeräte gleich heißen, teilen dessen Fehler; er fällt aus ihrem Verhältnis heraus.</translation>
</message>
<message>
<source>Name meter</source>
<translation>Messgerät benennen</translation>
</message>
<message>
<source>Gain uncertainty</source>
<translation>Eichunsicherheit</translation>
</message>
<message>
<source>gain_uncertainty</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>From its data sheet, for example ± 5 %: one factor common to all its readings.</source>
<translation>Aus dem Datenblatt, zum Beispiel ± 5 %: ein Faktor, der allen Messwerten gemeinsam ist.</translation>
</message>
<message>
<source>Noise</source>
<translation>Rauschen</translation>
</message>
<message>
<source>By how much one reading differs from the next at the same hole, placement included.</source>
<translation>Um wie viel sich ein Messwert vom nächsten am selben Loch unterscheidet, mit Platzierung.</translation>
</message>
<message>
<source>Of its receiving face above the board.</source>
<translation>Der Sensorfläche über dem Lochbrett.</translation>
</message>
<message>
<source>Cosine response</source>
<translation>Kosinuskorrektur</translation>
</message>
<message>
<source>ideal</source>
<translation>ideal</translation>
</message>
<message>
<source>Reading over that of an ideal receiver by angle from upright, for example 0: 1, 60: 0.97, 80: 0.85. Empty: ideal.</source>
<translation>Messwert durch den eines idealen Empfängers, nach Winkel von der Senkrechten, zum Beispiel 0: 1; 60: 0,97; 80: 0,85. Leer: ideal.</translation>
</message>
<message>
<source>It shows</source>
<translation>Es zeigt an</translation>
</message>
<message>
<source>A meter that shows lux needs the lamp's spectrum: readings typed from now on are divided by its lux per µmol.</source>
<translation>Ein Messgerät, das Lux anzeigt, braucht das Spektrum der Lampe: ab jetzt eingetippte Messwerte werden durch dessen Lux je µmol geteilt.</translation>
</message>
<message>
<source>Survey: {known_as}</source>
<translation>Messung: {known_as}</translation>
</message>
<message>
<source>Meter: {inside}</source>
<translation>Messgerät: {inside}</translation>
</message>
<message>
<source>{explanation} Usual: {text}.</source>
<translation>{explanation} Üblich: {text}.</translation>
</message>
<message>
<source>Survey doubt: {inside}</source>
<translation>Zweifel der Messung: {inside}</translation>
</message>
<message>
<source>{label} ±</source>
<translation>{label} ±</translation>
</message>
<message>
<source>{AS_PLAN} ({pop} %)</source>
<translation>{AS_PLAN} ({pop} %)</translation>
</message>
<message>
<source>{AS_PLAN} ({text})</source>
<translation>{AS_PLAN} ({text})</translation>
</message>
<message>
<source>As in the plan</source>
<translation>Wie im Plan</translation>
</message>
<message>
<source>Open air, no walls or ceiling</source>
<translation>Im Freien, keine Wände oder Decke</translation>
</message>
<message>
<source>Lux, {name}</source>
<translation>Lux, {name}</translation>
</message>
<message>
<source>Lux, {format_number} per µmol</source>
<translation>Lux, {format_number} je µmol</translation>
</message>
<message>
<source>Write the date as year, month, day: 2026-03-21.</source>
<translation>Das Datum als Jahr, Monat, Tag schreiben: 2026-03-21.</translation>
</message>
<message>
<source>Date survey</source>
<translation>Messung datieren</translation>
</message>
<message>
<source>Survey: {itemText}</source>
<translation>Messung: {itemText}</translation>
</message>
<message>
<source>Survey: unit of the meter</source>
<translation>Messung: Einheit des Messgeräts</translation>
</message>
<message>
<source>Write pairs of angle and relative reading, for example 0: 1, 60: 0.97, 80: 0.85.</source>
<translation>Paare aus Winkel und relativem Messwert schreiben, zum Beispiel 0: 1; 60: 0,97; 80: 0,85.</translation>
</message>
<message>
<source>Meter: cosine response</source>
<translation>Messgerät: Kosinuskorrektur</translation>
</message>
<message>
<source>{angle}: {value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(\d+(?:[.,]\d+)?|[.,]\d+)</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.pages.survey.table_dialog</name>
<message>
<source>What the table seems to mean</source>
<translation>Was die Tabelle zu bedeuten scheint</translation>
</message>
<message>
<source>Sheets of the workbook</source>
<translation>Blätter der Arbeitsmappe</translation>
</message>
<message>
<source>Take this sheet</source>
<translation>Dieses Blatt nehmen</translation>
</message>
<message>
<source>Read this text</source>
<translation>Diesen Text lesen</translation>
</message>
<message>
<source>Where the readings lie</source>
<translation>Wo die Messwerte liegen</translation>
</message>
<message>
<source>Take readings</source>
<translation>Messwerte übernehmen</translation>
</message>
<message>
<source>The table is</source>
<translation>Die Tabelle ist</translation>
</message>
<message>
<source>A picture of the board</source>
<translation>Ein Bild des Lochbretts</translation>
</message>
<message>
<source>Rows of readings</source>
<translation>Messwerte in Zeilen</translation>
</message>
<message>
<source>Cells parted by</source>
<translation>Zellen getrennt durch</translation>
</message>
<message>
<source>Heading rows</source>
<translation>Kopfzeilen</translation>
</message>
<message>
<source>Decimal mark</source>
<translation>Dezimalzeichen</translation>
</message>
<message>
<source>Point</source>
<translation>Punkt</translation>
</message>
<message>
<source>Comma</source>
<translation>Komma</translation>
</message>
<message>
<source>Beside the values</source>
<translation>Neben den Werten</translation>
</message>
<message>
<source>First row is the far side</source>
<translation>Erste Zeile ist die ferne Seite</translation>
</message>
<message>
<source>Lengths in</source>
<translation>Längen in</translation>
</message>
<message>
<source>Lamp's spectrum</source>
<translation>Spektrum der Lampe</translation>
</message>
<message>
<source>By it, lux, klx and foot-candles become {PPFD_UNIT}.</source>
<translation>Damit werden Lux, klx und foot-candles zu {PPFD_UNIT}.</translation>
</message>
<message>
<source>Goes into</source>
<translation>Kommt in</translation>
</message>
<message>
<source>A new survey</source>
<translation>Eine neue Messung</translation>
</message>
<message>
<source>'{name}', beside what it has</source>
<translation>„{name}“, neben das Vorhandene</translation>
</message>
<message>
<source>Its name</source>
<translation>Ihr Name</translation>
</message>
<message>
<source>Lies on</source>
<translation>Liegt auf</translation>
</message>
<message>
<source>On the board of</source>
<translation>Auf dem Lochbrett von</translation>
</message>
<message>
<source>Choose…</source>
<translation>Wählen…</translation>
</message>
<message>
<source>Hole numbers alone say nothing of where the holes are. Board and conditions are taken from that survey, but for what is on the walls.</source>
<translation>Lochnummern allein sagen nicht, wo die Löcher sind. Lochbrett und Bedingungen kommen von jener Messung, außer dem, was an den Wänden ist.</translation>
</message>
<message>
<source>Readings from {name}</source>
<translation>Messwerte aus {name}</translation>
</message>
<message>
<source>readings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{len} of {len2} holes read</source>
<translation>{len} von {len2} Löchern gemessen</translation>
</message>
<message>
<source>No readings to draw yet</source>
<translation>Noch keine Messwerte zu zeichnen</translation>
</message>
<message>
<source>This sheet is not taken.</source>
<translation>Dieses Blatt wird nicht genommen.</translation>
</message>
<message>
<source>Sheet '{sheet}': {other}</source>
<translation>Blatt „{sheet}“: {other}</translation>
</message>
<message>
<source>Take {count} sheets</source>
<translation>{count} Blätter übernehmen</translation>
</message>
<message>
<source>*{end} *{upper}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Tables ({_PATTERNS});;All files (*)</source>
<translation>Tabellen ({_PATTERNS});;Alle Dateien (*)</translation>
</message>
<message>
<source>Import readings</source>
<translation>Messwerte importieren</translation>
</message>
<message>
<source>The table</source>
<translation>Die Tabelle</translation>
</message>
<message>
<source>Import survey {name}</source>
<translation>Messung {name} importieren</translation>
</message>
<message>
<source>Import {len} sheets</source>
<translation>{len} Blätter importieren</translation>
</message>
<message>
<source>Took {value} readings</source>
<translation>{value} Messwerte übernommen</translation>
</message>
</context>
<context>
<name>planner.app.pages.survey.table_source</name>
<message>
<source>Pasted readings</source>
<translation>Eingefügte Messwerte</translation>
</message>
<message>
<source>Nothing to read yet. Copy a hole number and a reading in each row, or x, y and a reading, or a picture of the board, out of a spreadsheet, and paste it here.</source>
<translation>Noch nichts zu lesen. Aus einer Tabellenkalkulation eine Lochnummer und einen Messwert je Zeile kopieren, oder x, y und einen Messwert, oder ein Bild des Lochbretts, und hier einfügen.</translation>
</message>
<message>
<source>'{name}' is too large for a table.</source>
<translation>„{name}“ ist zu groß für eine Tabelle.</translation>
</message>
<message>
<source>'{name}' cannot be read: {reason_of}.</source>
<translation>„{name}“ lässt sich nicht lesen: {reason_of}.</translation>
</message>
<message>
<source>{end}</source>
<translation>{end}</translation>
</message>
<message>
<source>{low} {PPFD_UNIT}</source>
<translation>{low} {PPFD_UNIT}</translation>
</message>
<message>
<source>from {low} to {high} {PPFD_UNIT}</source>
<translation>{low} bis {high} {PPFD_UNIT}</translation>
</message>
<message>
<source>{count} reading{value} at {holes} hole{value2}, {span}.</source>
<translation>{count} Messwert{value}, {holes} Messpunkt{value2}, {span}.</translation>
</message>
<message>
<source>s</source>
<translation>e</translation>
</message>
<message>
<source>at</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Board and conditions are those of '{name}', but for what is on the walls.</source>
<translation>Lochbrett und Bedingungen sind die von „{name}“, außer dem, was an den Wänden ist.</translation>
</message>
<message>
<source>the table names holes by number only; choose on whose board they were read.</source>
<translation>die Tabelle nennt Löcher nur mit Nummern; wählen, auf wessen Lochbrett gemessen wurde.</translation>
</message>
<message>
<source>outside the space</source>
<translation>außerhalb des Raums</translation>
</message>
<message>
<source>beside the canopy it was read on</source>
<translation>neben dem Blätterdach, auf dem gemessen wurde</translation>
</message>
<message>
<source>Values only</source>
<translation>Nur Werte</translation>
</message>
<message>
<source>Names in the first column</source>
<translation>Namen in der ersten Spalte</translation>
</message>
<message>
<source>Names in the first row</source>
<translation>Namen in der ersten Zeile</translation>
</message>
<message>
<source>Names in both</source>
<translation>Namen in beiden</translation>
</message>
<message>
<source>x along the first row, y down the first column</source>
<translation>x in der ersten Zeile, y in der ersten Spalte</translation>
</message>
<message>
<source>What column {number} holds</source>
<translation>Inhalt von Spalte {number}</translation>
</message>
<message>
<source>hidden</source>
<translation>verborgen</translation>
</message>
<message>
<source>What this column holds: a place, readings in a unit, or nothing.</source>
<translation>Was diese Spalte enthält: einen Ort, Messwerte in einer Einheit oder nichts.</translation>
</message>
<message>
<source>Preview of the table</source>
<translation>Vorschau der Tabelle</translation>
</message>
<message>
<source>Hidden or a remark: not read.</source>
<translation>Verborgen oder eine Anmerkung: nicht gelesen.</translation>
</message>
<message>
<source>Text to be read</source>
<translation>Zu lesender Text</translation>
</message>
<message>
<source>Paste the readings here (Ctrl+V), or write them line by line.</source>
<translation>Die Messwerte hier einfügen (Strg+V) oder Zeile für Zeile schreiben.</translation>
</message>
</context>
<context>
<name>planner.app.plain</name>
<message>
<source>&lt;p&gt;{escape}&lt;/p&gt;</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.plan_desk</name>
<message>
<source>reading</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Opening {in_print}…</source>
<translation>{in_print} wird geöffnet…</translation>
</message>
<message>
<source>The plan</source>
<translation>Der Plan</translation>
</message>
<message>
<source>This plan cannot be opened</source>
<translation>Dieser Plan lässt sich nicht öffnen</translation>
</message>
<message>
<source>Opened {in_print}</source>
<translation>{in_print} geöffnet</translation>
</message>
<message>
<source>'{name}' is a {kind}, not a plan.</source>
<translation>„{name}“ ist kein Plan, sondern: {kind}.</translation>
</message>
<message>
<source>The plan was not saved</source>
<translation>Der Plan wurde nicht gespeichert</translation>
</message>
<message>
<source>{value}{SUFFIX}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>plan</source>
<translation>Plan</translation>
</message>
<message>
<source>Save plan as</source>
<translation>Plan speichern unter</translation>
</message>
<message>
<source>Saved {in_print}</source>
<translation>{in_print} gespeichert</translation>
</message>
<message>
<source>Unsaved work cannot be kept aside: {problem}.</source>
<translation>Ungespeicherte Arbeit lässt sich nicht sichern: {problem}.</translation>
</message>
<message>
<source>There was no unsaved work to rescue.</source>
<translation>Es gab keine ungespeicherte Arbeit zu retten.</translation>
</message>
<message>
<source>Your unsaved work could NOT be kept aside: {problem}. It is still in the window; save it now, on another disk if need be.</source>
<translation>Ihre ungespeicherte Arbeit konnte NICHT gesichert werden: {problem}. Sie ist noch im Fenster; jetzt speichern, notfalls auf einem anderen Datenträger.</translation>
</message>
<message>
<source>Your work was kept in {file} and will be offered at the next start.</source>
<translation>Ihre Arbeit liegt in {file} und wird beim nächsten Start angeboten.</translation>
</message>
<message>
<source>Unsaved work cannot be read</source>
<translation>Ungespeicherte Arbeit nicht lesbar</translation>
</message>
<message>
<source>Restored {name}; it is not saved yet</source>
<translation>{name} wiederhergestellt; noch nicht gespeichert</translation>
</message>
</context>
<context>
<name>planner.app.plots.chart</name>
<message>
<source>left</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bottom</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>finite</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>vertical</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>horizontal</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Show the whole chart</source>
<translation>Ganzes Diagramm zeigen</translation>
</message>
</context>
<context>
<name>planner.app.plots.colour_bar</name>
<message>
<source>+{text}</source>
<translation>+{text}</translation>
</message>
<message>
<source>Colours run from {low} to {high} {join}.</source>
<translation>Die Farben gehen von {low} bis {high} {join}.</translation>
</message>
<message>
<source>{name}: {words}</source>
<translation>{name}: {words}</translation>
</message>
<message>
<source> The target band is {ppfd} to {ppfd2}.</source>
<translation> Der Zielbereich ist {ppfd} bis {ppfd2}.</translation>
</message>
<message>
<source>cividis</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Colour bar</source>
<translation>Farbskala</translation>
</message>
<message>
<source>too</source>
<translation>zu</translation>
</message>
<message>
<source>small</source>
<translation>klein</translation>
</message>
</context>
<context>
<name>planner.app.plots.colours</name>
<message>
<source>'{name}' is not a colour map; choose one of {join}.</source>
<translation>„{name}“ ist keine Farbskala; zur Wahl stehen {join}.</translation>
</message>
</context>
<context>
<name>planner.app.plots.difference</name>
<message>
<source>Colours run from {reach} less to {reach} more, {join}. Grey is too small to be told apart.</source>
<translation>Die Farben gehen von {reach} weniger bis {reach} mehr, {join}. Grau ist zu klein, um unterscheidbar zu sein.</translation>
</message>
</context>
<context>
<name>planner.app.plots.exported</name>
<message>
<source>Pictures (*.png);;Drawings (*.svg)</source>
<translation>Bilder (*.png);;Zeichnungen (*.svg)</translation>
</message>
<message>
<source>;;Tables (*.csv)</source>
<translation>;;Tabellen (*.csv)</translation>
</message>
<message>
<source>Copy the picture</source>
<translation>Bild kopieren</translation>
</message>
<message>
<source>Copy the numbers</source>
<translation>Zahlen kopieren</translation>
</message>
<message>
<source>Save as …</source>
<translation>Speichern unter …</translation>
</message>
<message>
<source>Save the drawing</source>
<translation>Zeichnung speichern</translation>
</message>
<message>
<source>{name}.png</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>drawing</source>
<translation>Zeichnung</translation>
</message>
<message>
<source>white</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.plots.lamp_plots</name>
<message>
<source>Polar plot</source>
<translation>Polardiagramm</translation>
</message>
<message>
<source>left</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bottom</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Angle from straight down (°)</source>
<translation>Winkel von der Senkrechten nach unten (°)</translation>
</message>
<message>
<source>Along (share of the peak)</source>
<translation>Längs (Anteil des Maximums)</translation>
</message>
<message>
<source>Across</source>
<translation>Quer</translation>
</message>
<message>
<source>enclosed</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{angle}°: {format_number} % of the peak</source>
<translation>{angle}°: {format_number} % des Maximums</translation>
</message>
<message>
<source>along the lamp</source>
<translation>längs der Lampe</translation>
</message>
<message>
<source>across it</source>
<translation>quer dazu</translation>
</message>
<message>
<source>the same all around</source>
<translation>ringsum gleich</translation>
</message>
<message>
<source>{abs}°</source>
<translation>{abs}°</translation>
</message>
<message>
<source>one curve along, one across</source>
<translation>eine Kurve längs, eine quer</translation>
</message>
<message>
<source> Some of the light goes up.</source>
<translation> Ein Teil des Lichts geht nach oben.</translation>
</message>
<message>
<source>Intensity by angle from straight down, {planes}; the peak along lies at {peak}°.{up}</source>
<translation>Lichtstärke nach Winkel von der Senkrechten nach unten, {planes}; das Maximum längs liegt bei {peak}°.{up}</translation>
</message>
<message>
<source>blue</source>
<translation>Blau</translation>
</message>
<message>
<source>green</source>
<translation>Grün</translation>
</message>
<message>
<source>red</source>
<translation>Rot</translation>
</message>
<message>
<source>far-red</source>
<translation>Dunkelrot</translation>
</message>
<message>
<source>Spectrum</source>
<translation>Spektrum</translation>
</message>
<message>
<source>Wavelength (nm)</source>
<translation>Wellenlänge (nm)</translation>
</message>
<message>
<source>Photons</source>
<translation>Photonen</translation>
</message>
<message>
<source>Photons (share of the peak)</source>
<translation>Photonen (Anteil des Maximums)</translation>
</message>
<message>
<source>{format_number} %</source>
<translation>{format_number} %</translation>
</message>
<message>
<source>{at} nm: {share} % of the peak</source>
<translation>{at} nm: {share} % des Maximums</translation>
</message>
<message>
<source>1 {PPFD_UNIT} reads {lux} lx; 1 J of PAR holds {joule} µmol.</source>
<translation>1 {PPFD_UNIT} entspricht {lux} lx; 1 J PAR enthält {joule} µmol.</translation>
</message>
</context>
<context>
<name>planner.app.plots.option_charts</name>
<message>
<source>The lines run from the darkest to the brightest cell; they are no uncertainty.</source>
<translation>Die Linien gehen von der dunkelsten bis zur hellsten Zelle; sie sind keine Unsicherheit.</translation>
</message>
<message>
<source>measured, </source>
<translation>gemessen, </translation>
</message>
<message>
<source>, equal to the baseline for the purpose</source>
<translation>, für den Zweck gleich der Basis</translation>
</message>
<message>
<source>{name}: {kind}mean {ppfd}, from {ppfd2} to {ppfd3}{told}</source>
<translation>{name}: {kind}Mittel {ppfd}, von {ppfd2} bis {ppfd3}{told}</translation>
</message>
<message>
<source>What has light is ranked here.</source>
<translation>Was Licht hat, steht hier nach seiner Helligkeit geordnet.</translation>
</message>
<message>
<source>Ranking by mean PPFD</source>
<translation>Rangfolge nach mittlerer PPFD</translation>
</message>
<message>
<source>left</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bottom</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>PPFD ({PPFD_UNIT}), darkest to brightest cell</source>
<translation>PPFD ({PPFD_UNIT}), dunkelste bis hellste Zelle</translation>
</message>
<message>
<source>{PPFD_UNIT}. {said}. {SPAN}</source>
<translation>{PPFD_UNIT}. {said}. {SPAN}</translation>
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>maximum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Name</source>
<translation>Name</translation>
</message>
<message>
<source>= {ppfd}</source>
<translation>= {ppfd}</translation>
</message>
<message>
<source>{name} (measured)</source>
<translation>{name} (gemessen)</translation>
</message>
<message>
<source>With an option kept beside the plan, or one tried, light is set against cost here.</source>
<translation>Ist neben dem Plan eine Option behalten oder ausprobiert, stehen hier Licht und Kosten gegeneinander.</translation>
</message>
<message>
<source>The light of the options is still being computed, or no price is known.</source>
<translation>Das Licht der Varianten wird noch berechnet, oder kein Preis ist bekannt.</translation>
</message>
<message>
<source>Light against cost</source>
<translation>Licht gegen Kosten</translation>
</message>
<message>
<source>Nothing else beats: {names}.</source>
<translation>Nichts anderes schlägt: {names}.</translation>
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
<source>Unbeaten</source>
<translation>Ungeschlagen</translation>
</message>
<message>
<source>{name}: {light} for {cost}</source>
<translation>{name}: {light} für {cost}</translation>
</message>
</context>
<context>
<name>planner.app.plots.schedule_chart</name>
<message>
<source>stage</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>from</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>to</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Add stages and press 'Find for each stage' to see them over the weeks.</source>
<translation>Stadien hinzufügen und „Für jedes Stadium suchen“ drücken, um sie über die Wochen zu sehen.</translation>
</message>
<message>
<source>Schedule over the weeks</source>
<translation>Zeitplan über die Wochen</translation>
</message>
<message>
<source>Nothing has been found yet.</source>
<translation>Es wurde noch nichts gefunden.</translation>
</message>
<message>
<source>Height ({value})</source>
<translation>Höhe ({value})</translation>
</message>
<message>
<source>Time (weeks)</source>
<translation>Zeit (Wochen)</translation>
</message>
<message>
<source>{name}: {outcome}</source>
<translation>{name}: {outcome}</translation>
</message>
<message>
<source>{name}: {ppfd} {PPFD_UNIT}</source>
<translation>{name}: {ppfd} {PPFD_UNIT}</translation>
</message>
<message>
<source> {text}</source>
<translation> {text}</translation>
</message>
<message>
<source>▲ {outcome}</source>
<translation>▲ {outcome}</translation>
</message>
<message>
<source>{mark}{ppfd} µmol, {output}</source>
<translation>{mark}{ppfd} µmol, {output}</translation>
</message>
</context>
<context>
<name>planner.app.plots.section</name>
<message>
<source>With a lit lamp in the space, the light from A to B is drawn here.</source>
<translation>Mit einer leuchtenden Lampe im Raum wird hier das Licht von A bis B gezeichnet.</translation>
</message>
<message>
<source>Section</source>
<translation>Schnitt</translation>
</message>
<message>
<source>{map_name} ({map_unit})</source>
<translation>{map_name} ({map_unit})</translation>
</message>
<message>
<source>Distance from A ({unit})</source>
<translation>Abstand von A ({unit})</translation>
</message>
<message>
<source>Above the canopy ({unit})</source>
<translation>Über dem Blätterdach ({unit})</translation>
</message>
<message>
<source>{on_map} at {format_number} {value}</source>
<translation>{on_map} bei {format_number} {value}</translation>
</message>
<message>
<source>{map_name}&lt;br&gt;{map_unit}</source>
<translation>{map_name}&lt;br&gt;{map_unit}</translation>
</message>
<message>
<source>{map_name} along a line {length} long</source>
<translation>{map_name} entlang einer Linie von {length}</translation>
</message>
<message>
<source>{map_name}, {_bottom}</source>
<translation>{map_name}, {_bottom}</translation>
</message>
<message>
<source>, from {low} to {high} {map_unit}</source>
<translation>, von {low} bis {high} {map_unit}</translation>
</message>
<message>
<source>{said}.</source>
<translation>{said}.</translation>
</message>
<message>
<source>from A to B ({value})</source>
<translation>von A nach B ({value})</translation>
</message>
<message>
<source>{value} {format_length}</source>
<translation>{value} {format_length}</translation>
</message>
<message>
<source>x</source>
<translation>x</translation>
</message>
<message>
<source>y</source>
<translation>y</translation>
</message>
<message>
<source>height above the canopy ({value}), at {place}</source>
<translation>Höhe über dem Blätterdach ({value}), bei {place}</translation>
</message>
<message>
<source>No light along the line.</source>
<translation>Kein Licht entlang der Linie.</translation>
</message>
<message>
<source>Light along the section line</source>
<translation>Licht entlang der Schnittlinie</translation>
</message>
<message>
<source>{name}: from {ppfd} to {ppfd2} {PPFD_UNIT}.</source>
<translation>{name}: von {ppfd} bis {ppfd2} {PPFD_UNIT}.</translation>
</message>
<message>
<source>{name} ({PPFD_UNIT})</source>
<translation>{name} ({PPFD_UNIT})</translation>
</message>
<message>
<source>Distance from A ({value})</source>
<translation>Abstand von A ({value})</translation>
</message>
<message>
<source>PPFD&lt;br&gt;{PPFD_UNIT}</source>
<translation>PPFD&lt;br&gt;{PPFD_UNIT}</translation>
</message>
<message>
<source>{name}: {ppfd} {PPFD_UNIT}</source>
<translation>{name}: {ppfd} {PPFD_UNIT}</translation>
</message>
</context>
<context>
<name>planner.app.plots.survey_charts</name>
<message>
<source>lower</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Colours run from {format_number} (blue) to {format_number2} (orange) {unit}; grey is what the meter cannot tell.</source>
<translation>Die Farben gehen von {format_number} (blau) bis {format_number2} (orange) {unit}; Grau ist, was das Messgerät nicht unterscheidet.</translation>
</message>
<message>
<source>ratio</source>
<translation>Verhältnis</translation>
</message>
<message>
<source>{value}</source>
<translation>{value}</translation>
</message>
<message>
<source>+{number}</source>
<translation>+{number}</translation>
</message>
<message>
<source>Readings are set against the estimate here.</source>
<translation>Hier stehen Messwerte gegen die Schätzung.</translation>
</message>
<message>
<source>Measured against estimated</source>
<translation>Gemessen gegen geschätzt</translation>
</message>
<message>
<source>left</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Measured ({PPFD_UNIT})</source>
<translation>Gemessen ({PPFD_UNIT})</translation>
</message>
<message>
<source>bottom</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Estimated ({PPFD_UNIT})</source>
<translation>Geschätzt ({PPFD_UNIT})</translation>
</message>
<message>
<source>{len} dots; readings from {ppfd} to {ppfd2}, estimated {ppfd3} to {ppfd4} {PPFD_UNIT}.</source>
<translation>{len} Punkte; Messwerte von {ppfd} bis {ppfd2}, geschätzt {ppfd3} bis {ppfd4} {PPFD_UNIT}.</translation>
</message>
<message>
<source>Hole</source>
<translation>Loch</translation>
</message>
<message>
<source>hole {holes}: {ppfd} read, {ppfd2} estimated</source>
<translation>Loch {holes}: {ppfd} gemessen, {ppfd2} geschätzt</translation>
</message>
<message>
<source>Two whose intervals do not overlap can be told apart, at 95 % for all of them together; a bracket joins those that cannot.</source>
<translation>Zwei, deren Intervalle sich nicht überlappen, sind unterscheidbar, mit 95 % für alle zusammen; eine Klammer verbindet die, die es nicht sind.</translation>
</message>
<message>
<source>Read two surveys, and they are ranked here.</source>
<translation>Zwei Messungen machen, dann erscheint hier ihre Rangfolge.</translation>
</message>
<message>
<source>Ranking of the surveys</source>
<translation>Rangfolge der Messungen</translation>
</message>
<message>
<source>Over the base</source>
<translation>Gegenüber der Basis</translation>
</message>
<message>
<source>{name}: {ratio}, {low} to {high}</source>
<translation>{name}: {ratio}, {low} bis {high}</translation>
</message>
<message>
<source>Survey</source>
<translation>Messung</translation>
</message>
<message>
<source>PPFD ({PPFD_UNIT})</source>
<translation>PPFD ({PPFD_UNIT})</translation>
</message>
<message>
<source>Ratio</source>
<translation>Verhältnis</translation>
</message>
<message>
<source>Low</source>
<translation>Unten</translation>
</message>
<message>
<source>High</source>
<translation>Oben</translation>
</message>
<message>
<source>{ratio}  </source>
<translation>{ratio}  </translation>
</message>
<message>
<source>{value}{name}</source>
<translation>{value}{name}</translation>
</message>
<message>
<source>{value} {PPFD_UNIT}; {low} to {high} of base</source>
<translation>{value} {PPFD_UNIT}; {low} bis {high} der Basis</translation>
</message>
</context>
<context>
<name>planner.app.plots.sweep_map</name>
<message>
<source>cividis</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The points are being computed.</source>
<translation>Die Punkte werden berechnet.</translation>
</message>
<message>
<source>Map of the sweep</source>
<translation>Karte der Reihe</translation>
</message>
<message>
<source> {words}</source>
<translation> {words}</translation>
</message>
<message>
<source>{figure} over {label} and </source>
<translation>{figure} über {label} und </translation>
</message>
<message>
<source>{label}.{said}</source>
<translation>{label}.{said}</translation>
</message>
<message>
<source>Nothing has been swept yet.</source>
<translation>Noch keine Reihe gerechnet.</translation>
</message>
<message>
<source>bottom</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>left</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>row-major</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.plots.sweep_plot</name>
<message>
<source>maximum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Choose over what, from where to where, and press 'Sweep'.</source>
<translation>Wählen, worüber, von wo bis wo, und „Rechnen“ drücken.</translation>
</message>
<message>
<source>Curves of the sweep</source>
<translation>Kurven der Reihe</translation>
</message>
<message>
<source>bottom</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{label} {value} {unit}</source>
<translation>{label} {value} {unit}</translation>
</message>
<message>
<source>, {said}</source>
<translation>, {said}</translation>
</message>
<message>
<source>Nothing has been swept yet.</source>
<translation>Noch keine Reihe gerechnet.</translation>
</message>
<message>
<source>{len} points over {label}.</source>
<translation>{len} Punkte über {label}.</translation>
</message>
<message>
<source> {words_at}</source>
<translation> {words_at}</translation>
</message>
<message>
<source>{label} ({unit})</source>
<translation>{label} ({unit})</translation>
</message>
<message>
<source>Min / mean</source>
<translation>Min/Mittel</translation>
</message>
<message>
<source>PPFD&lt;br&gt;{PPFD_UNIT}</source>
<translation>PPFD&lt;br&gt;{PPFD_UNIT}</translation>
</message>
<message>
<source>Share (%)</source>
<translation>Anteil (%)</translation>
</message>
<message>
<source>left</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> ({unit})</source>
<translation> ({unit})</translation>
</message>
<message>
<source>{label}{unit}</source>
<translation>{label}{unit}</translation>
</message>
<message>
<source> {name}</source>
<translation> {name}</translation>
</message>
<message>
<source>– – mean, {name}</source>
<translation>– – Mittel, {name}</translation>
</message>
<message>
<source> the plan now </source>
<translation> der Plan jetzt </translation>
</message>
<message>
<source>{inside} {number}{unit}</source>
<translation>{inside} {number}{unit}</translation>
</message>
</context>
<context>
<name>planner.app.quantity_box</name>
<message>
<source>cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.questions</name>
<message>
<source>Unsaved changes</source>
<translation>Ungespeicherte Änderungen</translation>
</message>
<message>
<source>Save the changes to '{name}'?</source>
<translation>Die Änderungen an „{name}“ speichern?</translation>
</message>
<message>
<source>If you do not save, the changes since the last save are lost.</source>
<translation>Ohne Speichern gehen die Änderungen seit dem letzten Speichern verloren.</translation>
</message>
<message>
<source>The file has changed</source>
<translation>Die Datei hat sich geändert</translation>
</message>
<message>
<source>'{in_print}' was changed by another program since it was opened here.</source>
<translation>„{in_print}“ wurde von einem anderen Programm geändert, seit die Datei hier geöffnet wurde.</translation>
</message>
<message>
<source>Saving over it would lose those other changes.</source>
<translation>Überschreiben würde jene Änderungen verlieren.</translation>
</message>
<message>
<source>Save over it</source>
<translation>Überschreiben</translation>
</message>
<message>
<source>Save as…</source>
<translation>Speichern unter…</translation>
</message>
<message>
<source> It was kept on {kept_at} at {kept_at2}.</source>
<translation> Sie wurde am {kept_at} um {kept_at2} gesichert.</translation>
</message>
<message>
<source>It was never saved to a file.</source>
<translation>Sie wurde nie in eine Datei gespeichert.</translation>
</message>
<message>
<source>It belongs to {in_print}.</source>
<translation>Sie gehört zu {in_print}.</translation>
</message>
<message>
<source> That file was saved anew since; you will be asked before it is written over.</source>
<translation> Jene Datei wurde seither neu gespeichert; vor dem Überschreiben wird gefragt.</translation>
</message>
<message>
<source>Unsaved work found</source>
<translation>Ungespeicherte Arbeit gefunden</translation>
</message>
<message>
<source>The program ended last time without saving '{name}'. Restore that work?</source>
<translation>Das Programm endete letztes Mal, ohne „{name}“ zu speichern. Diese Arbeit wiederherstellen?</translation>
</message>
<message>
<source>{where}{when} Restoring opens it as unsaved; your file stays as it is until you save.</source>
<translation>{where}{when} Wiederherstellen öffnet sie als ungespeichert; Ihre Datei bleibt, wie sie ist, bis Sie speichern.</translation>
</message>
<message>
<source>Restore</source>
<translation>Wiederherstellen</translation>
</message>
<message>
<source>Discard</source>
<translation>Verwerfen</translation>
</message>
<message>
<source>Ask again next time</source>
<translation>Beim nächsten Mal fragen</translation>
</message>
<message>
<source>Not a plan</source>
<translation>Kein Plan</translation>
</message>
<message>
<source>Its lamp can be hung in the open plan.</source>
<translation>Die Lampe darin kann in den offenen Plan gehängt werden.</translation>
</message>
<message>
<source>Its readings can be put into a survey of the open plan.</source>
<translation>Die Messwerte darin können in eine Messung des offenen Plans.</translation>
</message>
<message>
<source>Show the lamp…</source>
<translation>Lampe zeigen…</translation>
</message>
<message>
<source>Import readings…</source>
<translation>Messwerte importieren…</translation>
</message>
<message>
<source>Open plan</source>
<translation>Plan öffnen</translation>
</message>
<message>
<source>*{suffix}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The {what} was not written</source>
<translation>Nicht geschrieben: {what}</translation>
</message>
<message>
<source>Wrote {name}</source>
<translation>{name} geschrieben</translation>
</message>
<message>
<source>.csv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.pdf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.png</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Tables (*.csv);;All files (*)</source>
<translation>Tabellen (*.csv);;Alle Dateien (*)</translation>
</message>
<message>
<source>JSON (*.json);;All files (*)</source>
<translation>JSON (*.json);;Alle Dateien (*)</translation>
</message>
<message>
<source>PDF (*.pdf);;All files (*)</source>
<translation>PDF (*.pdf);;Alle Dateien (*)</translation>
</message>
<message>
<source>PNG pictures (*.png);;All files (*)</source>
<translation>PNG-Bilder (*.png);;Alle Dateien (*)</translation>
</message>
<message>
<source>saved</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>no file can have such a name</source>
<translation>so kann keine Datei heißen</translation>
</message>
</context>
<context>
<name>planner.app.report_window</name>
<message>
<source>A4</source>
<translation>A4</translation>
</message>
<message>
<source>Letter</source>
<translation>Letter</translation>
</message>
<message>
<source>.pdf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.html</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>PDF (*.pdf)</source>
<translation>PDF (*.pdf)</translation>
</message>
<message>
<source>Web page (*.html)</source>
<translation>Webseite (*.html)</translation>
</message>
<message>
<source>options</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>schedule</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Comparing the options, and how sure each difference is…</source>
<translation>Die Varianten werden verglichen, und wie sicher jeder Unterschied ist…</translation>
</message>
<message>
<source>Finding height and output for each stage…</source>
<translation>Höhe und Dimmung für jedes Stadium werden gesucht…</translation>
</message>
<message>
<source>Reckoning how sure the figures are…</source>
<translation>Wie sicher die Werte sind, wird berechnet…</translation>
</message>
<message>
<source>Printing and saving wait until it is done or stopped.</source>
<translation>Drucken und Speichern warten, bis dies fertig oder angehalten ist.</translation>
</message>
<message>
<source>The report as it will be printed</source>
<translation>Der Bericht, wie er gedruckt wird</translation>
</message>
<message>
<source>{len} pages: {titles}.</source>
<translation>{len} Seiten: {titles}.</translation>
</message>
<message>
<source>white</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Report: {name}</source>
<translation>Bericht: {name}</translation>
</message>
<message>
<source>Paper</source>
<translation>Papier</translation>
</message>
<message>
<source>What is still being reckoned</source>
<translation>Was noch berechnet wird</translation>
</message>
<message>
<source>Progress of the report</source>
<translation>Fortschritt des Berichts</translation>
</message>
<message>
<source>Stop</source>
<translation>Anhalten</translation>
</message>
<message>
<source>Print…</source>
<translation>Drucken…</translation>
</message>
<message>
<source>On a printer of this system</source>
<translation>Auf einem Drucker dieses Systems</translation>
</message>
<message>
<source>Save as PDF…</source>
<translation>Als PDF speichern…</translation>
</message>
<message>
<source>Text that can be selected, drawings as lines</source>
<translation>Text, der sich markieren lässt, Zeichnungen als Linien</translation>
</message>
<message>
<source>Save as HTML…</source>
<translation>Als HTML speichern…</translation>
</message>
<message>
<source>One page that needs no other file</source>
<translation>Eine Seite, die keine weitere Datei braucht</translation>
</message>
<message>
<source>Only the build sheet</source>
<translation>Nur der Bauzettel</translation>
</message>
<message>
<source>One page to take to the cabinet</source>
<translation>Eine Seite zum Mitnehmen an den Schrank</translation>
</message>
<message>
<source>Drawings</source>
<translation>Zeichnungen</translation>
</message>
<message>
<source>Each plan, map and chart by itself</source>
<translation>Jeder Grundriss, jede Karte und jedes Diagramm einzeln</translation>
</message>
<message>
<source>Close</source>
<translation>Schließen</translation>
</message>
<message>
<source>report</source>
<translation>Bericht</translation>
</message>
<message>
<source>at hand</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The report</source>
<translation>Der Bericht</translation>
</message>
<message>
<source>whole</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_PENDING} {_WAITS}</source>
<translation>{_PENDING} {_WAITS}</translation>
</message>
<message>
<source>All sections</source>
<translation>Alle Abschnitte</translation>
</message>
<message>
<source>{_name}{ending}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Save the report</source>
<translation>Bericht speichern</translation>
</message>
<message>
<source>Sent the report to the printer</source>
<translation>Bericht an den Drucker gesendet</translation>
</message>
</context>
<context>
<name>planner.app.run</name>
<message>
<source>FLATPAK_ID</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>qtbase</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>%(levelname)s: %(message)s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>No plan was open any more, so no work is lost.</source>
<translation>Es war kein Plan mehr offen, also ist keine Arbeit verloren.</translation>
</message>
<message>
<source>QT_QPA_PLATFORM</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>offscreen</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner.log</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{details}

{lines}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Something went wrong</source>
<translation>Etwas ist schiefgegangen</translation>
</message>
<message>
<source>The program met a fault of its own and could not do what you asked. {fate} You can go on working; save your plan under a new name to be safe.</source>
<translation>Das Programm ist auf einen eigenen Fehler gestoßen und konnte das Verlangte nicht tun. {fate} Sie können weiterarbeiten; speichern Sie den Plan sicherheitshalber unter neuem Namen.</translation>
</message>
<message>
<source>Report</source>
<translation>Fehlerbericht</translation>
</message>
<message>
<source>Copy report</source>
<translation>Fehlerbericht kopieren</translation>
</message>
<message>
<source>Close the program</source>
<translation>Programm schließen</translation>
</message>
<message>
<source>Your unsaved work could NOT be kept aside ({error}); save it now.</source>
<translation>Ihre ungespeicherte Arbeit konnte NICHT gesichert werden ({error}); jetzt speichern.</translation>
</message>
<message>
<source>No plan was open yet, so no work is lost.</source>
<translation>Es war noch kein Plan offen, also ist keine Arbeit verloren.</translation>
</message>
<message>
<source>utf-8</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>backslashreplace</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>%(asctime)s %(levelname)s %(name)s: %(message)s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.screen</name>
<message>
<source>libEGL.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libGL.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libX11.so.6</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libdbus-1.so.3</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libfontconfig.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libfreetype.so.6</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libglib-2.0.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxkbcommon.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libz.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libzstd.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libegl1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libgl1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libx11-6</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libdbus-1-3</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libfontconfig1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libfreetype6</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libglib2.0-0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxkbcommon0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>zlib1g</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libzstd1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libX11-xcb.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libwayland-client.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libwayland-cursor.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-cursor.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-icccm.so.4</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-image.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-keysyms.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-randr.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-render-util.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-render.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-shape.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-shm.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-sync.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-util.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-xfixes.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-xkb.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb.so.1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxkbcommon-x11.so.0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libx11-xcb1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libwayland-client0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libwayland-cursor0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-cursor0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-icccm4</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-image0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-keysyms1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-randr0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-render-util0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-render0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-shape0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-shm0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-sync1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-util1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-xfixes0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb-xkb1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxcb1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>libxkbcommon-x11-0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fonts-dejavu-core</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>/usr/share/fonts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>/usr/local/share/fonts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>~/.local/share/fonts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>~/.fonts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xcb</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wayland</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>linux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>QT_QPA_PLATFORM</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>DISPLAY</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>WAYLAND_DISPLAY</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>There is no screen here for the window</source>
<translation>Hier gibt es keinen Bildschirm für das Fenster</translation>
</message>
<message>
<source> and </source>
<translation> und </translation>
</message>
<message>
<source>{name}={value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The screen named by {named} does not answer</source>
<translation>Der mit {named} benannte Bildschirm antwortet nicht</translation>
</message>
<message>
<source>The window cannot be shown, because this system lacks {lacking}; {remedy}.</source>
<translation>Das Fenster lässt sich nicht zeigen, weil diesem System {lacking} fehlt; {remedy}.</translation>
</message>
<message>
<source>apt-get install --no-install-recommends {join}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>on Debian or Ubuntu root installs what is missing with: {line}</source>
<translation>unter Debian oder Ubuntu installiert root das Fehlende mit: {line}</translation>
</message>
<message>
<source>*.[to]tf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>*.ttc</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>/tmp/.X11-unix/X{number}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>XDG_RUNTIME_DIR</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.settings</name>
<message>
<source>ignore</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.ini</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>settings-damaged.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The settings could not be read; they were set aside as '{aside}'.</source>
<translation>Die Einstellungen waren nicht lesbar; sie wurden als „{aside}“ beiseitegelegt.</translation>
</message>
<message>
<source>The settings in '{file}' could not be read and are not used.</source>
<translation>Die Einstellungen in „{file}“ waren nicht lesbar und werden nicht verwendet.</translation>
</message>
<message>
<source>rect</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>recent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>spectra</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>window_rect</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp_spectra</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>started_before</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>before</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&amp;{number}  </source>
<translation>&amp;{number}  </translation>
</message>
<message>
<source>{number}  </source>
<translation>{number}  </translation>
</message>
<message>
<source>  (not found)</source>
<translation>  (nicht gefunden)</translation>
</message>
<message>
<source>{mark}{name}{note}</source>
<translation>{mark}{name}{note}</translation>
</message>
<message>
<source>No plans opened yet</source>
<translation>Noch keine Pläne geöffnet</translation>
</message>
<message>
<source>Clear this list</source>
<translation>Liste leeren</translation>
</message>
</context>
<context>
<name>planner.app.spoken</name>
<message>
<source>_stand_ins</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.theme</name>
<message>
<source>#f3f4f1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#1d2120</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#1b1f1e</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#e9ece9</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#ffffff</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#eceeea</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#9aa29e</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#e6e8e4</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#2c3231</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#a3231b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#ff9d92</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#0d6a63</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#5ec4b6</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#0b1413</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#4d5c85</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#a9b6df</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#434a48</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#dfe2dd</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#363d3b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#b9beb9</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#4d5553</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#858b87</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#7a8380</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#565c59</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#757d79</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#878e8a</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a theme needs a running QApplication</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tnum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Fusion</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.app.tour</name>
<message>
<source>Size</source>
<translation>Maße</translation>
</message>
<message>
<source>Type your space's inside width, depth and height here, or drag its walls and corners in the drawing.</source>
<translation>Hier Breite, Tiefe und Höhe des Raums innen eintippen, oder Wände und Ecken in der Zeichnung ziehen.</translation>
</message>
<message>
<source>Lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>Drag a lamp to its place here and to its height in the side view; the key L hangs one more.</source>
<translation>Eine Lampe hier an ihren Ort ziehen und in der Seitenansicht auf ihre Höhe; die Taste L hängt eine weitere auf.</translation>
</message>
<message>
<source>Lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>Click a wall and choose here what it is lined with; the list says what each would bring.</source>
<translation>Auf eine Wand klicken und hier wählen, womit sie ausgekleidet ist; die Liste sagt, was jede brächte.</translation>
</message>
<message>
<source>Figures</source>
<translation>Kennzahlen</translation>
</message>
<message>
<source>Read here how much light falls on the canopy and how even it is, with what is not known of it; a click on a figure tells what it is.</source>
<translation>Hier steht, wie viel Licht auf das Blätterdach fällt und wie gleichmäßig, mit dem, was daran unsicher ist; ein Klick auf eine Kennzahl erklärt sie.</translation>
</message>
<message>
<source>Side by side</source>
<translation>Nebeneinander</translation>
</message>
<message>
<source>Keep the sketch as an option with Ctrl+K, and weigh options against each other on this page.</source>
<translation>Die Skizze mit Strg+K als Variante behalten und Varianten auf dieser Seite gegeneinander abwägen.</translation>
</message>
<message>
<source>Survey</source>
<translation>Messung</translation>
</message>
<message>
<source>When it is built, print a board with holes, read your meter at each of them, and see on this page whether the light is as planned.</source>
<translation>Wenn gebaut ist: ein Lochbrett drucken, an jedem Loch das Messgerät ablesen und auf dieser Seite sehen, ob das Licht ist wie geplant.</translation>
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
<source>Leave the tour</source>
<translation>Rundgang beenden</translation>
</message>
<message>
<source>Esc does the same.</source>
<translation>Esc tut dasselbe.</translation>
</message>
<message>
<source>sketch</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value} of {len}</source>
<translation>{value} von {len}</translation>
</message>
<message>
<source>{title}  ·  {place}</source>
<translation>{title}  ·  {place}</translation>
</message>
<message>
<source>Tour, {place}: {title}</source>
<translation>Rundgang, {place}: {title}</translation>
</message>
<message>
<source>Done</source>
<translation>Fertig</translation>
</message>
<message>
<source>{text}; {place}: {title}</source>
<translation>{text}; {place}: {title}</translation>
</message>
</context>
<context>
<name>planner.catalogue.data_sheet</name>
<message>
<source>µ</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>μ</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ø</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Ø</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>º</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>u</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> dia </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\d+(?:[.,]\d+)*</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?:(?:u|micro)\s?-?mol(?:e?s)?)</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?:\s*(?:/|per)?\s*\(?s(?:ec(?:ond)?)?\b(?:\s*\^?-1)?\)?)</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?:mm|cm|m|inch(?:es)?|in|feet|foot|ft|\"|')</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\d+(?:[ -]\d+/\d+|/\d+|[.,]\d+)?\s*{_UNIT}?</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\d+(?:[ -]\d+/\d+|/\d+|[.,]\d+)?\s*{_UNIT}(?!\w)</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_LENGTH}\s*(?:x|by)\s*{_LENGTH}(?:\s*(?:x|by)\s*{_LENGTH})?</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?:ppfd\W{0,3})?{_N}\s*{_UMOL}\s*(?:/|per)?\s*\(?m\s?\^?-?2\W{0,4}(?:per)?\W?s?(?:ec)?(?:-1)?</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ppfd\W{0,3}{_N}(?:\s*{_UMOL}{_PER_S}?)?</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_N}\s*w(?:atts?)?\s*(?:hps|hid|mh)?\s*(?:equiv\w*|eq\b|replacement)</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?:equiv\w*|replaces)\s*(?:to|of)?\s*(?:an?)?\s*{_N}\s*w(?:atts?)?\b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_SIZE}\s*(?:tents?|area|coverage|footprint)\b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\b(?:cover(?:s|age|ing)?|footprint|for|area|veg\w*|flower\w*|bloom|tent)\b[^\d]{0,14}{_SIZE}(?:\s*(?:tent|area|space|coverage|footprint))?</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?:\bat\b|@|hung|distance|height)[^\d]{0,8}{_LENGTH}(?=\s|,|;|$)(?!\s*(?:w|u))</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_N}(?:\s*[-/~]\s*{_N})?\s*(?:v(?:ac|dc)?|hz|kg|lbs?|g|lm(?:/w)?|lumens?|lux|lx|ma|a|nm|%|h|hrs?|hours|years?|yrs?|°\s*[cf]|k(?:elvin)?|btu(?:/h)?|cri|ra|db)(?![\w°])</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\bip\s?\d\d\b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\b(?:cri|ra|l70|l80|l90|pf|power factor|thd)\W{0,3}{_N}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?P&lt;n&gt;{_N})\s*{_UMOL}\s*(?:/|per)?\s*(?:j(?:oule)?|w\s?s)\b(?:\s*\^?-1)?</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\b(?:ppe|efficacy|efficiency)\W{0,3}(?P&lt;n&gt;{_N})(?:\s*{_UMOL}(?:\s*/?\s*(?:j|ws?)\b)?)?</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\b(?:ppf|photon flux|flux)\s*\(?\s*{_UMOL}{_PER_S}\)?\W{0,3}(?P&lt;n&gt;{_N})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?P&lt;n&gt;{_N})\s*{_UMOL}{_PER_S}?</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\b(?:ppf|photon flux|flux)\W{0,4}(?P&lt;n&gt;{_N})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?P&lt;n&gt;{_N})\s*(?P&lt;k&gt;k)?w(?:att(?:s|age)?)?\b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\b(?:power|wattage|watts?|draw)\s*(?:\(w\)|draw)?\W{0,3}(?P&lt;n&gt;{_N})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?P&lt;n&gt;{_N})\s*(?:°|deg(?:rees?)?\b)</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\bbeam(?:\s*angle)?\W{0,3}(?P&lt;n&gt;{_N})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?P&lt;n&gt;\d+)\s*(?:-|x|led|\s)*\s*bars?\b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\bbars\W{0,3}(?P&lt;n&gt;\d+)\b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\bdia(?:m(?:eter)?)?\W{0,3}(?P&lt;n&gt;{_LENGTH})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?P&lt;n&gt;{_LENGTH})\s*dia(?:m(?:eter)?)?\b</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\b(?:length|long|bar|strip|tube|l)\W{0,3}(?P&lt;n&gt;{_MEASURED})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>(?P&lt;n&gt;{_MEASURED})</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>240 W 600 µmol/s 30x30 cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{format_number} W</source>
<translation>{format_number} W</translation>
</message>
<message>
<source>{format_number} {FLUX_UNIT}</source>
<translation>{format_number} {FLUX_UNIT}</translation>
</message>
<message>
<source>{count} bars</source>
<translation>{count} Leisten</translation>
</message>
<message>
<source> x </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> ({told})</source>
<translation> ({told})</translation>
</message>
<message>
<source>This text is too long for a line about one lamp; copy one like '{EXAMPLE}'.</source>
<translation>Dieser Text ist zu lang für eine Zeile über eine Lampe; eine wie „{EXAMPLE}“ kopieren.</translation>
</message>
<message>
<source>'{count} x {each} W' can be {count} lamps of {each} W or one lamp with {count} parts; write the power of one lamp, and hang it as often as you have it.</source>
<translation>„{count} x {each} W“ kann {count} Lampen zu {each} W bedeuten oder eine Lampe mit {count} Teilen; die Leistung einer Lampe schreiben und sie so oft aufhängen wie vorhanden.</translation>
</message>
<message>
<source>The line says {between} to {between2} without telling which goes with what; write the figure at full output.</source>
<translation>Die Zeile nennt {between} bis {between2}, ohne zu sagen, was wozu gehört; den Wert bei voller Leistung schreiben.</translation>
</message>
<message>
<source>efficacies</source>
<translation>Effizienzen</translation>
</message>
<message>
<source>photon fluxes</source>
<translation>Photonenflüsse</translation>
</message>
<message>
<source>powers</source>
<translation>Leistungen</translation>
</message>
<message>
<source>beam angles</source>
<translation>Abstrahlwinkel</translation>
</message>
<message>
<source>beam taken as 120°, {doubt}° more or less</source>
<translation>Abstrahlwinkel als 120° angenommen, {doubt}° mehr oder weniger</translation>
</message>
<message>
<source>The beam angle must be from {minimum}° to {maximum}°, not {angle}°.</source>
<translation>Der Abstrahlwinkel muss von {minimum}° bis {maximum}° sein, nicht {angle}°.</translation>
</message>
<message>
<source>{_kind}, {format_number} W</source>
<translation>{_kind}, {format_number} W</translation>
</message>
<message>
<source>pasted-{format_number}w-{format_number2}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>As pasted: {join}</source>
<translation>Wie eingefügt: {join}</translation>
</message>
<message>
<source>k</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> and </source>
<translation> und </translation>
</message>
<message>
<source>The line names different {what} ({listed}); leave the one at full output.</source>
<translation>Die Zeile nennt verschiedene {what} ({listed}); nur den Wert bei voller Leistung stehen lassen.</translation>
</message>
<message>
<source>, and lumens are weighted for the eye</source>
<translation>, und Lumen sind für das Auge gewichtet</translation>
</message>
<message>
<source>, and PPFD is the light on a place under it</source>
<translation>, und PPFD ist das Licht auf einer Stelle darunter</translation>
</message>
<message>
<source>This text names no lamp; paste a line of its data sheet, such as '{EXAMPLE}'.</source>
<translation>Dieser Text nennt keine Lampe; eine Zeile ihres Datenblatts einfügen, zum Beispiel „{EXAMPLE}“.</translation>
</message>
<message>
<source>The line says nothing of the lamp's photon flux{more}: add it in µmol/s (PPF), or its efficacy in µmol/J.</source>
<translation>Die Zeile sagt nichts über den Photonenfluss der Lampe{more}: ihn in µmol/s (PPF) hinzufügen, oder ihre Effizienz in µmol/J.</translation>
</message>
<message>
<source>The line says nothing of the power: add the watts drawn at full output.</source>
<translation>Die Zeile sagt nichts über die Leistung: die Watt bei voller Leistung hinzufügen.</translation>
</message>
<message>
<source>Power and photon flux of a lamp must be above 0.</source>
<translation>Leistung und Photonenfluss einer Lampe müssen über 0 sein.</translation>
</message>
<message>
<source>'{text}' can be read as {low} or as {high}; write which of the two.</source>
<translation>„{text}“ kann {low} oder {high} bedeuten; eines von beiden schreiben.</translation>
</message>
<message>
<source>{format_number} W at {format_number2} {EFFICACY_UNIT} make {format_number3} {FLUX_UNIT}, but the line says {format_number4}; leave out what does not hold.</source>
<translation>{format_number} W mit {format_number2} {EFFICACY_UNIT} ergeben {format_number3} {FLUX_UNIT}, die Zeile sagt aber {format_number4}; weglassen, was nicht stimmt.</translation>
</message>
<message>
<source>{why}.</source>
<translation>{why}.</translation>
</message>
<message>
<source>A lamp has at most 24 bars, not {count}.</source>
<translation>Eine Lampe hat höchstens 24 Leisten, nicht {count}.</translation>
</message>
<message>
<source>A lamp of {format_number} x {format_number2} cm cannot be: each side must be from {value} to {value2} cm. Check the unit.</source>
<translation>Eine Lampe von {format_number} x {format_number2} cm kann es nicht geben: jede Seite muss {value} bis {value2} cm lang sein. Die Einheit prüfen.</translation>
</message>
<message>
<source>{count} bars do not fit side by side into {format_number} cm; write the outer size over all bars, such as 110x105 cm.</source>
<translation>{count} Leisten passen nicht nebeneinander in {format_number} cm; das Außenmaß über alle Leisten schreiben, zum Beispiel 110x105 cm.</translation>
</message>
<message>
<source>bars taken as {format_number} cm wide</source>
<translation>Leisten als {format_number} cm breit angenommen</translation>
</message>
<message>
<source>The line names more than one size; leave the one over the lamp's lit faces.</source>
<translation>Die Zeile nennt mehr als eine Größe; nur die über die leuchtenden Flächen stehen lassen.</translation>
</message>
<message>
<source>round, taken as a square of the same area</source>
<translation>rund, als Quadrat gleicher Fläche genommen</translation>
</message>
<message>
<source>The line has {count} bars and no size: add the outer size over all bars, such as 110x105 cm.</source>
<translation>Die Zeile hat {count} Leisten und keine Größe: das Außenmaß über alle Leisten hinzufügen, zum Beispiel 110x105 cm.</translation>
</message>
<message>
<source>The line has a bar and no length: add it, such as 60 cm.</source>
<translation>Die Zeile hat eine Leiste und keine Länge: sie hinzufügen, zum Beispiel 60 cm.</translation>
</message>
<message>
<source>a strip 2.5 cm wide</source>
<translation>ein 2,5 cm breiter Streifen</translation>
</message>
<message>
<source>size taken as 30 x 30 cm</source>
<translation>Größe als 30 x 30 cm angenommen</translation>
</message>
<message>
<source>'{text}' has no unit; write {text} cm or {text} in, whichever it is.</source>
<translation>„{text}“ hat keine Einheit; {text} cm oder {text} in schreiben, je nachdem.</translation>
</message>
<message>
<source>{part} {last}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inches</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inch</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>feet</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ft</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>foot</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{strip}' has no unit; write {strip} cm or in.</source>
<translation>„{strip}“ hat keine Einheit; {strip} cm oder in schreiben.</translation>
</message>
<message>
<source>its thickness, {format_number} cm, is left out</source>
<translation>die Dicke, {format_number} cm, ist weggelassen</translation>
</message>
<message>
<source>Bulb</source>
<translation>Birne</translation>
</message>
<message>
<source>Bar</source>
<translation>Leiste</translation>
</message>
<message>
<source>Panel</source>
<translation>Paneel</translation>
</message>
</context>
<context>
<name>planner.catalogue.lamp_files.convert</name>
<message>
<source>circle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ellipse</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>vertical cylinder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>vertical elliptical cylinder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sphere</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ellipsoid</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the file gives no input watts; type the watts of the lamp</source>
<translation>die Datei nennt keine Eingangsleistung; die Watt der Lampe eintippen</translation>
</message>
<message>
<source>the beam of this file is too narrow to be aimed down</source>
<translation>der Lichtkegel dieser Datei ist zu eng, um nach unten gerichtet zu werden</translation>
</message>
<message>
<source>What the file sends along the lamp's length was aimed straight down.</source>
<translation>Was die Datei längs der Lampe aussendet, wurde gerade nach unten gerichtet.</translation>
</message>
<message>
<source>Lamp from a file</source>
<translation>Lampe aus einer Datei</translation>
</message>
<message>
<source>give either the photon flux or the lumens per {FLUX_UNIT}, not both</source>
<translation>entweder den Photonenfluss oder die Lumen je {FLUX_UNIT} angeben, nicht beides</translation>
</message>
<message>
<source>The file gives the shape of the light only; the photon flux was given by hand.</source>
<translation>Die Datei gibt nur die Form des Lichts; der Photonenfluss wurde von Hand angegeben.</translation>
</message>
<message>
<source>a lamp file gives candela, not photons; give the photon flux (PPF) of the lamp in {FLUX_UNIT}, or choose a spectrum to compute it from the lumens</source>
<translation>eine Lampendatei gibt Candela, nicht Photonen; den Photonenfluss (PPF) der Lampe in {FLUX_UNIT} angeben oder ein Spektrum wählen, um ihn aus den Lumen zu berechnen</translation>
</message>
<message>
<source>{lumens_per_umol} lumens per {FLUX_UNIT} is impossible; a number above 0 is expected</source>
<translation>{lumens_per_umol} Lumen je {FLUX_UNIT} ist unmöglich; erwartet: eine Zahl über 0</translation>
</message>
<message>
<source>The file gives candela only; the photon flux was computed from its {lumens} lm with {lumens_per_umol} lm per {FLUX_UNIT} of the chosen spectrum.</source>
<translation>Die Datei gibt nur Candela; der Photonenfluss wurde aus {lumens} lm mit {lumens_per_umol} lm je {FLUX_UNIT} des gewählten Spektrums berechnet.</translation>
</message>
<message>
<source>a photon flux in {FLUX_UNIT}</source>
<translation>Photonenfluss in {FLUX_UNIT}</translation>
</message>
<message>
<source>input watts</source>
<translation>Eingangsleistung in W</translation>
</message>
<message>
<source>{value} is not possible for {what}; a number above 0 and up to {greatest} is expected</source>
<translation>{value} ist nicht möglich ({what}); erwartet: eine Zahl über 0 und bis {greatest}</translation>
</message>
<message>
<source>{why}; check the photon flux and the watts</source>
<translation>{why}; Photonenfluss und Watt prüfen</translation>
</message>
<message>
<source>The table of the file was thinned out.</source>
<translation>Die Tabelle der Datei wurde ausgedünnt.</translation>
</message>
<message>
<source>The {word} of the file is drawn as a rectangle of the same area, {value} × {value2} cm.</source>
<translation>{word}: in der Datei; gezeichnet als Rechteck gleicher Fläche, {value} × {value2} cm.</translation>
</message>
<message>
<source>The {word} of the file is drawn as the flat rectangle seen from below.</source>
<translation>{word}: in der Datei; gezeichnet als flaches Rechteck, wie von unten gesehen.</translation>
</message>
<message>
<source>The lamp is taken as a point; the file gives no size.</source>
<translation>Die Lampe wird als Punkt genommen; die Datei nennt keine Größe.</translation>
</message>
<message>
<source> The file gives {length} × {width} m, longer than a lamp here can be ({maximum} m); it was cut. Are its sizes in feet, not in metres?</source>
<translation> Die Datei nennt {length} × {width} m, länger als eine Lampe hier sein kann ({maximum} m); das wurde gekürzt. Sind die Größen in Fuß statt in Metern?</translation>
</message>
<message>
<source>IES:LM-63-2019</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Candela are scaled to {lumens} lm; photon flux {ppf} umol/s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Photon flux {ppf} umol/s, lumens by a spectrum of {lumens_per_umol} lm per umol/s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LUMINAIRE</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>OTHER</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rectangle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>no name in the file</source>
<translation>kein Name in der Datei</translation>
</message>
<message>
<source>Format</source>
<translation>Format</translation>
</message>
<message>
<source>{source_format}, photometric type {photometric_type}</source>
<translation>{source_format}, photometrischer Typ {photometric_type}</translation>
</message>
<message>
<source>Symmetry</source>
<translation>Symmetrie</translation>
</message>
<message>
<source>Light in all directions</source>
<translation>Licht in alle Richtungen</translation>
</message>
<message>
<source>{total} lm</source>
<translation>{total} lm</translation>
</message>
<message>
<source>Lamps as stated</source>
<translation>Lampen laut Datei</translation>
</message>
<message>
<source>absolute photometry, no lumens stated</source>
<translation>absolute Photometrie, keine Lumen angegeben</translation>
</message>
<message>
<source>{stated} lm; {value} % leave the lamp body</source>
<translation>{stated} lm; {value} % verlassen das Gehäuse</translation>
</message>
<message>
<source>Light that goes down</source>
<translation>Licht nach unten</translation>
</message>
<message>
<source>{value} %</source>
<translation>{value} %</translation>
</message>
<message>
<source>Peak</source>
<translation>Maximum</translation>
</message>
<message>
<source>{max} cd</source>
<translation>{max} cd</translation>
</message>
<message>
<source>along the length</source>
<translation>längs</translation>
</message>
<message>
<source>across the length</source>
<translation>quer</translation>
</message>
<message>
<source>Beam angle {where}</source>
<translation>Abstrahlwinkel {where}</translation>
</message>
<message>
<source>{angle}°</source>
<translation>{angle}°</translation>
</message>
<message>
<source>Luminous opening</source>
<translation>Leuchtende Fläche</translation>
</message>
<message>
<source>Input power</source>
<translation>Eingangsleistung</translation>
</message>
<message>
<source>{watts} W, {per_watt} lm/W</source>
<translation>{watts} W, {per_watt} lm/W</translation>
</message>
<message>
<source>point</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{word}, {value} × {value2} cm</source>
<translation>{word}, {value} × {value2} cm</translation>
</message>
<message>
<source>, {value} cm high</source>
<translation>, {value} cm hoch</translation>
</message>
<message>
<source>no symmetry</source>
<translation>keine Symmetrie</translation>
</message>
<message>
<source>right</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.catalogue.lamp_files.eulumdat</name>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>axial</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about 0-180</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about 90-270</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>quadrant</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>MANUFAC</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>TEST</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LUMINAIRE</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LUMCAT</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_FILENAME</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the file ends before line {line}; an EULUMDAT file goes on there</source>
<translation>die Datei endet vor Zeile {line}; eine EULUMDAT-Datei geht dort weiter</translation>
</message>
<message>
<source>found {value} for {what}; 0 or more is expected</source>
<translation>gefunden: {value} ({what}); erwartet: 0 oder mehr</translation>
</message>
<message>
<source>type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>symmetry</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>step</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the type of the luminaire (1 to 3)</source>
<translation>Typ der Leuchte (1 bis 3)</translation>
</message>
<message>
<source>the symmetry (0 to 4)</source>
<translation>Symmetrie (0 bis 4)</translation>
</message>
<message>
<source>the number of C planes</source>
<translation>Anzahl der C-Ebenen</translation>
</message>
<message>
<source>the number of angles in each plane</source>
<translation>Anzahl der Winkel in jeder Ebene</translation>
</message>
<message>
<source>the light output ratio</source>
<translation>Leuchtenwirkungsgrad</translation>
</message>
<message>
<source>the conversion factor</source>
<translation>Umrechnungsfaktor</translation>
</message>
<message>
<source>Line 24 gives the conversion factor {factor}; it is taken as 1.</source>
<translation>Zeile 24 nennt den Umrechnungsfaktor {factor}; er wird als 1 genommen.</translation>
</message>
<message>
<source>the tilt during measurement</source>
<translation>Neigung bei der Messung</translation>
</message>
<message>
<source>The lamp was measured with a tilt of {text}°; the planes are taken as if it hung level.</source>
<translation>Die Lampe wurde mit {text}° Neigung gemessen; die Ebenen werden genommen, als hinge sie waagerecht.</translation>
</message>
<message>
<source>a direct ratio</source>
<translation>ein direktes Verhältnis</translation>
</message>
<message>
<source>a C angle</source>
<translation>ein C-Winkel</translation>
</message>
<message>
<source>a γ angle</source>
<translation>ein γ-Winkel</translation>
</message>
<message>
<source>an intensity in cd per 1000 lm</source>
<translation>eine Lichtstärke in cd je 1000 lm</translation>
</message>
<message>
<source>From line {left} on the file goes on after the last intensity; the rest is not read.</source>
<translation>Ab Zeile {left} geht die Datei nach der letzten Lichtstärke weiter; der Rest wird nicht gelesen.</translation>
</message>
<message>
<source>EULUMDAT</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>C 0-180</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>C 90-270</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a size of the luminous area</source>
<translation>ein Maß der leuchtenden Fläche</translation>
</message>
<message>
<source>a height of the luminous area</source>
<translation>eine Höhe der leuchtenden Fläche</translation>
</message>
<message>
<source>the length of the luminaire</source>
<translation>Länge der Leuchte</translation>
</message>
<message>
<source>the width of the luminaire</source>
<translation>Breite der Leuchte</translation>
</message>
<message>
<source>The file gives no luminous area; the size of the whole luminaire is used.</source>
<translation>Die Datei nennt keine leuchtende Fläche; die Größe der ganzen Leuchte wird genommen.</translation>
</message>
<message>
<source>the luminous area is larger than 100 m; a size in mm is expected</source>
<translation>die leuchtende Fläche ist größer als 100 m; erwartet: eine Größe in mm</translation>
</message>
<message>
<source>point</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>vertical cylinder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>circle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>box</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rectangle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the number of lamp sets</source>
<translation>Anzahl der Lampensätze</translation>
</message>
<message>
<source>there is no lamp set {value}; the file holds {count}</source>
<translation>es gibt keinen Lampensatz {value}; die Datei enthält {count}</translation>
</message>
<message>
<source>{number}: {_told}</source>
<translation>{number}: {_told}</translation>
</message>
<message>
<source>The file holds {count} lamp sets ({told}); set {value} is used.</source>
<translation>Die Datei enthält {count} Lampensätze ({told}); Satz {value} wird genommen.</translation>
</message>
<message>
<source>{kind} {lumens} lm {watts} W</source>
<translation>{kind} {lumens} lm {watts} W</translation>
</message>
<message>
<source>the number of lamps</source>
<translation>Anzahl der Lampen</translation>
</message>
<message>
<source>the total flux of the lamps in lm</source>
<translation>Gesamtlichtstrom der Lampen in lm</translation>
</message>
<message>
<source>Lines {line} to {value} give no lamps or no lumens; the intensities are taken for 1000 lm, so that only the shape is right.</source>
<translation>Die Zeilen {line} bis {value} nennen keine Lampen oder keine Lumen; die Lichtstärken werden für 1000 lm genommen, sodass nur die Form stimmt.</translation>
</message>
<message>
<source>the wattage including ballast</source>
<translation>Leistung mit Vorschaltgerät</translation>
</message>
<message>
<source>there are {count} C planes, but with the symmetry of line 3 their number must be a multiple of {parts}</source>
<translation>es gibt {count} C-Ebenen, aber mit der Symmetrie aus Zeile 3 muss ihre Zahl ein Vielfaches von {parts} sein</translation>
</message>
<message>
<source>with the symmetry of line 3 the stored planes must run from C {value} to C {value2}, but the C angles listed there run from {value3} to {value4}</source>
<translation>mit der Symmetrie aus Zeile 3 müssen die gespeicherten Ebenen von C {value} bis C {value2} gehen, aber die dort genannten C-Winkel gehen von {value3} bis {value4}</translation>
</message>
<message>
<source>ISSUEDATE</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LAMP</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_COLOUR</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_CRI</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The intensities add up to {value} % of the lamps' lumens, but line 23 states a light output ratio of {value2} %. Only the shape is used.</source>
<translation>Die Lichtstärken ergeben zusammen {value} % der Lumen der Lampen, aber Zeile 23 nennt einen Leuchtenwirkungsgrad von {value2} %. Nur die Form wird genommen.</translation>
</message>
<message>
<source>the downward flux fraction</source>
<translation>Anteil des Lichts nach unten</translation>
</message>
<message>
<source>The intensities send {value} % of the light down, but line 22 states {value2} %.</source>
<translation>Die Lichtstärken senden {value} % des Lichts nach unten, aber Zeile 22 nennt {value2} %.</translation>
</message>
</context>
<context>
<name>planner.catalogue.lamp_files.lm63_read</name>
<message>
<source>C</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>B</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a vertical angle</source>
<translation>ein vertikaler Winkel</translation>
</message>
<message>
<source>a horizontal angle</source>
<translation>ein horizontaler Winkel</translation>
</message>
<message>
<source>From line {left} on the file goes on after the last candela value; the rest is not read.</source>
<translation>Ab Zeile {left} geht die Datei nach dem letzten Candela-Wert weiter; der Rest wird nicht gelesen.</translation>
</message>
<message>
<source>the lamp gives no light in any direction; candela values above 0 are expected</source>
<translation>die Lampe gibt in keine Richtung Licht; erwartet: Candela-Werte über 0</translation>
</message>
<message>
<source>IES</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LM-63-1986</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Line {value} names a revision of LM-63 that is not known ({shown}); the file is read as the 2002 form.</source>
<translation>Zeile {value} nennt eine unbekannte Fassung von LM-63 ({shown}); die Datei wird in der Form von 2002 gelesen.</translation>
</message>
<message>
<source>LABEL</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Line {value} is no keyword line such as '[TEST] …'; it is kept as a label.</source>
<translation>Zeile {value} ist keine Schlüsselwortzeile wie „[TEST] …“; sie wird als Beschriftung behalten.</translation>
</message>
<message>
<source>Line {value} divides the keywords into blocks; they are read as one.</source>
<translation>Zeile {value} teilt die Schlüsselwörter in Blöcke; sie werden als einer gelesen.</translation>
</message>
<message>
<source>{before}
{text}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>more than {MAX_KEYWORDS} keyword lines; a line 'TILT=NONE' is expected before</source>
<translation>mehr als {MAX_KEYWORDS} Schlüsselwortzeilen; davor wird eine Zeile 'TILT=NONE' erwartet</translation>
</message>
<message>
<source>there is no line that begins with 'TILT='; it is expected after the keyword lines</source>
<translation>keine Zeile beginnt mit 'TILT='; sie wird nach den Schlüsselwortzeilen erwartet</translation>
</message>
<message>
<source>the number of lamps</source>
<translation>Anzahl der Lampen</translation>
</message>
<message>
<source>the lumens per lamp</source>
<translation>Lumen je Lampe</translation>
</message>
<message>
<source>Line {line} gives {lumens} lumens per lamp; it is taken as -1, which says that the candela are absolute.</source>
<translation>Zeile {line} nennt {lumens} Lumen je Lampe; das wird als -1 genommen, was heißt, dass die Candela absolut sind.</translation>
</message>
<message>
<source>Line {line} gives 0 lamps or 0 lumens; the candela are taken as absolute.</source>
<translation>Zeile {line} nennt 0 Lampen oder 0 Lumen; die Candela werden als absolut genommen.</translation>
</message>
<message>
<source>the candela multiplier</source>
<translation>Candela-Faktor</translation>
</message>
<message>
<source>the number of vertical angles</source>
<translation>Anzahl der vertikalen Winkel</translation>
</message>
<message>
<source>the number of horizontal angles</source>
<translation>Anzahl der horizontalen Winkel</translation>
</message>
<message>
<source>the photometric type (1 = C, 2 = B, 3 = A)</source>
<translation>photometrischer Typ (1 = C, 2 = B, 3 = A)</translation>
</message>
<message>
<source>the units type (1 = feet, 2 = metres)</source>
<translation>Einheit (1 = Fuß, 2 = Meter)</translation>
</message>
<message>
<source>width, length and height of the luminous opening</source>
<translation>Breite, Länge und Höhe der leuchtenden Fläche</translation>
</message>
<message>
<source>the luminous opening is larger than 1000; a size in feet or metres is expected</source>
<translation>die leuchtende Fläche ist größer als 1000; erwartet: eine Größe in Fuß oder Metern</translation>
</message>
<message>
<source>the ballast factor</source>
<translation>Vorschaltgerätefaktor</translation>
</message>
<message>
<source>the second factor of the ballast (1 if unused)</source>
<translation>zweiter Faktor des Vorschaltgeräts (1, wenn unbenutzt)</translation>
</message>
<message>
<source>found {generation} for the factor of ballast and lamp photometry; a number above 0 is expected</source>
<translation>gefunden: {generation} (Faktor für Vorschaltgerät und Lampe); erwartet: eine Zahl über 0</translation>
</message>
<message>
<source>Line {line} gives {generation} for the file generation type; a number from 1 to below 2 is expected. It is taken as undefined.</source>
<translation>Zeile {line} nennt {generation} als Art der Dateierzeugung; erwartet wird eine Zahl von 1 bis unter 2. Sie wird als unbestimmt genommen.</translation>
</message>
<message>
<source>the input watts</source>
<translation>Eingangsleistung in W</translation>
</message>
<message>
<source>found {watts} for the input watts; 0 or more is expected</source>
<translation>gefunden: {watts} (Eingangsleistung in W); erwartet: 0 oder mehr</translation>
</message>
<message>
<source>The file gives no input watts.</source>
<translation>Die Datei nennt keine Eingangsleistung.</translation>
</message>
<message>
<source>found {value} for {what}; a number above 0 is expected</source>
<translation>gefunden: {value} ({what}); erwartet: eine Zahl über 0</translation>
</message>
<message>
<source>a candela value</source>
<translation>ein Candela-Wert</translation>
</message>
<message>
<source>The file is of photometric type {kind}; it was converted to vertical planes by interpolation.</source>
<translation>Die Datei ist vom photometrischen Typ {kind}; sie wurde durch Interpolation in vertikale Ebenen umgerechnet.</translation>
</message>
<message>
<source>the horizontal angles begin at {horizontal}°; type {kind} begins at 0° or -90°</source>
<translation>die horizontalen Winkel beginnen bei {horizontal}°; Typ {kind} beginnt bei 0° oder -90°</translation>
</message>
<message>
<source>left and right alike</source>
<translation>links und rechts gleich</translation>
</message>
<message>
<source>Left and right of the lamp differ, and files of types A and B do not all count the horizontal angle the same way round; compare the polar plot with the lamp.</source>
<translation>Links und rechts der Lampe unterscheiden sich, und nicht alle Dateien der Typen A und B zählen den horizontalen Winkel in derselben Richtung; das Polardiagramm mit der Lampe vergleichen.</translation>
</message>
<message>
<source>no symmetry</source>
<translation>keine Symmetrie</translation>
</message>
<message>
<source>The candela add up to {total} lm, more than the {stated} lm of the lamps the file states; one of them is wrong. Only the shape is used.</source>
<translation>Die Candela ergeben zusammen {total} lm, mehr als die {stated} lm der Lampen laut Datei; eines davon ist falsch. Nur die Form wird genommen.</translation>
</message>
<message>
<source>The TILT line says nothing; it is taken as TILT=NONE.</source>
<translation>Die TILT-Zeile sagt nichts; sie wird als TILT=NONE genommen.</translation>
</message>
<message>
<source>The tilt file {shown} is not beside the lamp file; a lamp that hangs level does not need it.</source>
<translation>Die Tilt-Datei {shown} liegt nicht neben der Lampendatei; eine waagerecht hängende Lampe braucht sie nicht.</translation>
</message>
<message>
<source>the tilt file {shown} cannot be used: {error}</source>
<translation>die Tilt-Datei {shown} ist nicht verwendbar: {error}</translation>
</message>
<message>
<source>The tilt table gives the factor {level} for a lamp that hangs level, where 1 is usual; it is not applied.</source>
<translation>Die Tilt-Tabelle nennt den Faktor {level} für eine waagerecht hängende Lampe, wo 1 üblich ist; er wird nicht angewendet.</translation>
</message>
<message>
<source>the lamp-to-luminaire geometry of the tilt table</source>
<translation>Anordnung von Lampe und Leuchte in der Tilt-Tabelle</translation>
</message>
<message>
<source>the number of tilt angles</source>
<translation>Anzahl der Neigungswinkel</translation>
</message>
<message>
<source>a tilt angle</source>
<translation>ein Neigungswinkel</translation>
</message>
<message>
<source>a tilt factor</source>
<translation>ein Neigungsfaktor</translation>
</message>
<message>
<source>found {min} for a tilt factor; 0 or more is expected</source>
<translation>gefunden: {min} (Neigungsfaktor); erwartet: 0 oder mehr</translation>
</message>
<message>
<source>The vertical angles up to line {line} run from {first}° to {last}°; outside of them the lamp is taken as dark.</source>
<translation>Die vertikalen Winkel bis Zeile {line} gehen von {first}° bis {last}°; außerhalb wird die Lampe als dunkel genommen.</translation>
</message>
<message>
<source>All light of this lamp goes up.</source>
<translation>Alles Licht dieser Lampe geht nach oben.</translation>
</message>
<message>
<source>The only horizontal angle is {first}°, not 0°; the lamp is taken as the same all around.</source>
<translation>Der einzige horizontale Winkel ist {first}°, nicht 0°; die Lampe wird als ringsum gleich genommen.</translation>
</message>
<message>
<source>axial</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>quadrant</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about 0-180</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about 90-270</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The horizontal angles run from -90° to 90°; the lamp is taken as mirrored about the 90-270 plane.</source>
<translation>Die horizontalen Winkel gehen von -90° bis 90°; die Lampe wird als an der Ebene 90-270 gespiegelt genommen.</translation>
</message>
<message>
<source>The horizontal angles run from -180° to 180°; they are taken as 0 to 360.</source>
<translation>Die horizontalen Winkel gehen von -180° bis 180°; sie werden als 0 bis 360 genommen.</translation>
</message>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the horizontal angles run from {first}° to {last}°; they must be 0° alone, or run from 0° to 90°, 180° or 360°, or from 90° to 270°</source>
<translation>die horizontalen Winkel gehen von {first}° bis {last}°; sie müssen nur 0° sein oder von 0° bis 90°, 180° oder 360° oder von 90° bis 270° gehen</translation>
</message>
<message>
<source>The planes at {horizontal}° and {horizontal2}° are the same direction but differ; the first is used.</source>
<translation>Die Ebenen bei {horizontal}° und {horizontal2}° sind dieselbe Richtung, aber verschieden; die erste wird genommen.</translation>
</message>
<message>
<source>The horizontal angles stop at {horizontal}°; the gap to 360° is bridged in a straight line.</source>
<translation>Die horizontalen Winkel enden bei {horizontal}°; die Lücke bis 360° wird geradlinig überbrückt.</translation>
</message>
</context>
<context>
<name>planner.catalogue.lamp_files.lm63_write</name>
<message>
<source>point</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rectangle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>box</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>circle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>vertical cylinder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ellipse</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ellipsoid</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sphere</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>horizontal cylinder along the 0° plane</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>horizontal cylinder across the 0° plane</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>vertical elliptical cylinder</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>vertical ellipse</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>vertical circle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>width {width}, length {length}, height {height} m</source>
<translation>Breite {width}, Länge {length}, Höhe {height} m</translation>
</message>
<message>
<source>The signs of the luminous opening ({size}) stand for no shape of LM-63; it is taken as a {flat} of that size.</source>
<translation>Die Vorzeichen der leuchtenden Fläche ({size}) stehen für keine Form von LM-63; genommen wird diese Form in jener Größe: {flat}.</translation>
</message>
<message>
<source>The size of the luminous opening ({size}) follows another revision of LM-63 than the file's first line; it is taken as a {shape}.</source>
<translation>Die Größe der leuchtenden Fläche ({size}) folgt einer anderen Fassung von LM-63 als die erste Zeile der Datei; genommen wird diese Form: {shape}.</translation>
</message>
<message>
<source>The luminous opening ({size}) is taken as a {shape}; compare with the lamp itself.</source>
<translation>Für die leuchtende Fläche ({size}) wird diese Form genommen: {shape}; mit der Lampe selbst vergleichen.</translation>
</message>
<message>
<source>TEST</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>TESTLAB</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ISSUEDATE</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>MANUFAC</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>IES:LM-63-2019</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>[{key}] not stated</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_LABEL</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>1 {generation} {_plain}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' cannot be written: {reason_of}</source>
<translation>„{name}“ lässt sich nicht schreiben: {reason_of}</translation>
</message>
<message>
<source>[{value}] {line}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>MORE</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>TILT=NONE</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>TILT=INCLUDE</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.catalogue.lamp_files.photometry</name>
<message>
<source>line {line}: </source>
<translation>Zeile {line}: </translation>
</message>
<message>
<source>{where}{problem}.</source>
<translation>{where}{problem}.</translation>
</message>
<message>
<source>point</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>In type A files the lamp looks sideways: H 0 V 0 lies along the lamp's length. If the lamp is to shine down, aim it down.</source>
<translation>In Dateien vom Typ A blickt die Lampe zur Seite: H 0 V 0 liegt längs der Lampe. Soll sie nach unten leuchten, nach unten richten.</translation>
</message>
<message>
<source>C</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the candela table must have the shape (azimuths, polar angles)</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LUMINAIRE</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LUMCAT</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>OTHER</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LABEL</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>TEST</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>axial</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>quadrant</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about 0-180</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about 90-270</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the same all around the vertical axis</source>
<translation>ringsum gleich um die senkrechte Achse</translation>
</message>
<message>
<source>the same in each quarter</source>
<translation>in jedem Viertel gleich</translation>
</message>
<message>
<source>mirrored about the 0-180 plane</source>
<translation>gespiegelt an der Ebene 0-180</translation>
</message>
<message>
<source>mirrored about the 90-270 plane</source>
<translation>gespiegelt an der Ebene 90-270</translation>
</message>
<message>
<source>no symmetry</source>
<translation>keine Symmetrie</translation>
</message>
<message>
<source>right</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.catalogue.lamp_files.reading</name>
<message>
<source>the file '{name}' cannot be read: {reason_of}</source>
<translation>die Datei „{name}“ lässt sich nicht lesen: {reason_of}</translation>
</message>
<message>
<source>the file is neither LM-63 (a line 'TILT=' is missing) nor EULUMDAT (lines 2 to 5 hold no type, symmetry and number of planes)</source>
<translation>die Datei ist weder LM-63 (eine Zeile 'TILT=' fehlt) noch EULUMDAT (die Zeilen 2 bis 5 enthalten nicht Typ, Symmetrie und Anzahl der Ebenen)</translation>
</message>
</context>
<context>
<name>planner.catalogue.lamp_files.tokens</name>
<message>
<source>the file is larger than {value} MB, far too large for a lamp file</source>
<translation>die Datei ist größer als {value} MB, viel zu groß für eine Lampendatei</translation>
</message>
<message>
<source>the file is not plain text; an LM-63 or EULUMDAT file is expected</source>
<translation>die Datei ist kein reiner Text; erwartet: eine LM-63- oder EULUMDAT-Datei</translation>
</message>
<message>
<source>the file has more than {_MOST_LINES} lines, far too many</source>
<translation>die Datei hat mehr als {_MOST_LINES} Zeilen, viel zu viele</translation>
</message>
<message>
<source>the file is empty; an LM-63 or EULUMDAT file is expected</source>
<translation>die Datei ist leer; erwartet: eine LM-63- oder EULUMDAT-Datei</translation>
</message>
<message>
<source>'{text}…'</source>
<translation>„{text}…“</translation>
</message>
<message>
<source>'{text}'</source>
<translation>„{text}“</translation>
</message>
<message>
<source>nothing</source>
<translation>nichts</translation>
</message>
<message>
<source>found {found} where {what} is expected, a number</source>
<translation>gefunden: {found}; erwartet: {what}, eine Zahl</translation>
</message>
<message>
<source>found {shown} for {what}, far beyond anything a lamp can have</source>
<translation>gefunden: {shown} ({what}), weit mehr, als eine Lampe haben kann</translation>
</message>
<message>
<source>found {value} for {what}; a whole number from {lowest} to {highest} is expected</source>
<translation>gefunden: {value} ({what}); erwartet: eine ganze Zahl von {lowest} bis {highest}</translation>
</message>
<message>
<source>the file ends where {what} is expected</source>
<translation>die Datei endet, wo dies erwartet wird: {what}</translation>
</message>
<message>
<source>the file ends after {index} of {count} numbers where {what} is expected</source>
<translation>die Datei endet nach {index} von {count} Zahlen, wo dies erwartet wird: {what}</translation>
</message>
<message>
<source>found {value} for {what}; a value from {lowest}° to {highest}° is expected</source>
<translation>gefunden: {value} ({what}); erwartet: ein Wert von {lowest}° bis {highest}°</translation>
</message>
<message>
<source>found {value} for {what} after {values}; each angle must be greater than the one before by at least {_LEAST_STEP_DEG}°</source>
<translation>gefunden: {value} ({what}) nach {values}; jeder Winkel muss um mindestens {_LEAST_STEP_DEG}° größer sein als der davor</translation>
</message>
<message>
<source>candela times multipliers is far beyond anything a lamp can have</source>
<translation>Candela mal Faktoren ist weit mehr, als eine Lampe haben kann</translation>
</message>
<message>
<source>the lamp gives no light in any direction; candela values above 0 are expected</source>
<translation>die Lampe gibt in keine Richtung Licht; erwartet: Candela-Werte über 0</translation>
</message>
<message>
<source>a candela value is far below 0 (the least is {min}); 0 or more is expected</source>
<translation>ein Candela-Wert liegt weit unter 0 (der kleinste ist {min}); erwartet: 0 oder mehr</translation>
</message>
<message>
<source>Some candela values are a little below 0; they are taken as 0.</source>
<translation>Einige Candela-Werte liegen etwas unter 0; sie werden als 0 genommen.</translation>
</message>
</context>
<context>
<name>planner.catalogue.library</name>
<message>
<source>lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>the catalogue holds no crop '{key}'.</source>
<translation>der Katalog enthält keine Kultur „{key}“.</translation>
</message>
<message>
<source>the catalogue holds no {noun} '{key}'.</source>
<translation>der Katalog enthält keinen Eintrag „{key}“ ({noun}).</translation>
</message>
<message>
<source>catalogue/linings.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>catalogue/lamps.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>entry</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{stem}-{number}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>linings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The folder '{folder}' could not be read: {reason_of}.</source>
<translation>Der Ordner „{folder}“ war nicht lesbar: {reason_of}.</translation>
</message>
<message>
<source>'{path}' was left out: {error}</source>
<translation>„{path}“ wurde ausgelassen: {error}</translation>
</message>
<message>
<source>'{path}' was left out: another file already holds the key '{key}'; give each entry its own key.</source>
<translation>„{path}“ wurde ausgelassen: eine andere Datei hat schon den Schlüssel „{key}“; jedem Eintrag einen eigenen geben.</translation>
</message>
<message>
<source>it is not a file.</source>
<translation>es ist keine Datei.</translation>
</message>
<message>
<source>it is larger than 1 MB, far too large for one entry.</source>
<translation>sie ist größer als 1 MB, viel zu groß für einen Eintrag.</translation>
</message>
<message>
<source>it could not be read: {reason_of}.</source>
<translation>nicht lesbar: {reason_of}.</translation>
</message>
<message>
<source>the key 'open' stands for an opening; give the lining another key.</source>
<translation>der Schlüssel 'open' steht für eine Öffnung; der Auskleidung einen anderen geben.</translation>
</message>
<message>
<source>Value error, </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>it is not JSON ({message}).</source>
<translation>es ist kein JSON ({message}).</translation>
</message>
<message>
<source>{message}.</source>
<translation>{message}.</translation>
</message>
<message>
<source>field '{place}': {message}.</source>
<translation>Feld „{place}“: {message}.</translation>
</message>
<message>
<source>{key}.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' could not be kept in '{folder}': {reason_of}. Check that the folder may be written to and the disk is not full.</source>
<translation>„{name}“ konnte nicht in „{folder}“ abgelegt werden: {reason_of}. Prüfen, ob der Ordner beschreibbar und der Datenträger nicht voll ist.</translation>
</message>
<message>
<source>*.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{key}' could not be removed: {reason_of}.</source>
<translation>„{key}“ konnte nicht entfernt werden: {reason_of}.</translation>
</message>
<message>
<source>Published, quoted second-hand, or typical from memory.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The photoperiod to begin with.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the usual photoperiod of '{name}' ({hours_usual} h) must lie between {hours_low} h and {hours_high} h.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>two stages of '{name}' carry the same key.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' has no stage '{key}'.</source>
<translation>„{name}“ hat kein Stadium „{key}“.</translation>
</message>
<message>
<source>crop</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name}, {name2}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>catalogue/crops.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>catalogue/cautions.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cautions.md</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>utf-8</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hallway-cabinet</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>white-board</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>New grow space</source>
<translation>Neuer Raum</translation>
</message>
<message>
<source>demo/{key}.plan.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.catalogue.spectra</name>
<message>
<source>SpectrumError</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>SpectrumReading</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>built_in_spectra</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>read_spectrum_file</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>catalogue/spectra</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{FOLDER}/index.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{FOLDER}/{file}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>is_model</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>note</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' could not be read: {reason_of}.</source>
<translation>„{name}“ war nicht lesbar: {reason_of}.</translation>
</message>
<message>
<source>Spectrum</source>
<translation>Spektrum</translation>
</message>
<message>
<source>spectrum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Read from the file '{name}'.</source>
<translation>Aus der Datei „{name}“ gelesen.</translation>
</message>
</context>
<context>
<name>planner.catalogue.spectrum_csv</name>
<message>
<source>SpectrumError</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>SpectrumReading</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>parse_spectrum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'450,0.82' or '450;0,82'</source>
<translation>'450,0.82' oder '450;0,82'</translation>
</message>
<message>
<source>nan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>infinity</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>na</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>n/a</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>null</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#n/a</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#num!</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>There is no line of numbers in the file. Each line should hold a wavelength in nm and a value, such as {_EXAMPLE}, with a comma, semicolon or tab between them.</source>
<translation>In der Datei ist keine Zeile mit Zahlen. Jede Zeile sollte eine Wellenlänge in nm und einen Wert enthalten, zum Beispiel {_EXAMPLE}, getrennt durch Komma, Semikolon oder Tabulator.</translation>
</message>
<message>
<source>Value error, </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{join}: {text}.</source>
<translation>{join}: {text}.</translation>
</message>
<message>
<source>The file is larger than {value} MB, far too large for one spectrum.</source>
<translation>Die Datei ist größer als {value} MB, viel zu groß für ein Spektrum.</translation>
</message>
<message>
<source>The file begins like UTF-16 text but is damaged; save it again as UTF-8.</source>
<translation>Die Datei beginnt wie UTF-16-Text, ist aber beschädigt; sie neu als UTF-8 speichern.</translation>
</message>
<message>
<source>The file is not text. Export the spectrum as CSV: lines of wavelength and value.</source>
<translation>Die Datei ist kein Text. Das Spektrum als CSV exportieren: Zeilen aus Wellenlänge und Wert.</translation>
</message>
<message>
<source>Line {number} cannot be cut into columns: {error}.</source>
<translation>Zeile {number} lässt sich nicht in Spalten teilen: {error}.</translation>
</message>
<message>
<source>Line {line} has one column. A wavelength in nm and a value are needed, such as {_EXAMPLE}, with a comma, semicolon or tab between them.</source>
<translation>Zeile {line} hat nur eine Spalte. Nötig sind eine Wellenlänge in nm und ein Wert, zum Beispiel {_EXAMPLE}, getrennt durch Komma, Semikolon oder Tabulator.</translation>
</message>
<message>
<source>Line {line} has {len} columns where {width} were expected. If its numbers have a decimal comma, put a semicolon or tab between the columns.</source>
<translation>Zeile {line} hat {len} Spalten, erwartet waren {width}. Haben die Zahlen ein Dezimalkomma, die Spalten durch Semikolon oder Tabulator trennen.</translation>
</message>
<message>
<source>The file holds {len} line{value} of numbers; a spectrum needs at least {MIN_SAMPLES}.</source>
<translation>Die Datei enthält {len} Zeile{value} mit Zahlen; ein Spektrum braucht mindestens {MIN_SAMPLES}.</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>The file holds {len} lines of numbers; at most {MAX_SAMPLES} are read. Keep every tenth, or only 300 to 800 nm.</source>
<translation>Die Datei enthält {len} Zeilen mit Zahlen; höchstens {MAX_SAMPLES} werden gelesen. Jede zehnte behalten, oder nur 300 bis 800 nm.</translation>
</message>
<message>
<source>Line {seen} has a decimal point and line {seen2} a comma. Use one of them throughout, and no mark between thousands.</source>
<translation>Zeile {seen} hat einen Dezimalpunkt und Zeile {seen2} ein Komma. Überall dasselbe verwenden, und kein Zeichen zwischen Tausendern.</translation>
</message>
<message>
<source>Line {line}: the mark in '{cell}' may be a decimal mark or one between thousands. Write the values without a mark between thousands.</source>
<translation>Zeile {line}: das Zeichen in „{cell}“ kann ein Dezimalzeichen sein oder eines zwischen Tausendern. Die Werte ohne Tausenderzeichen schreiben.</translation>
</message>
<message>
<source>Line {line} has nothing in column {value}; write a number, or remove the line.</source>
<translation>Zeile {line} hat nichts in Spalte {value}; eine Zahl schreiben oder die Zeile entfernen.</translation>
</message>
<message>
<source>Line {line}: '{shortened}' is not a number such as 0.82, 0,82 or 8.2e-1.</source>
<translation>Zeile {line}: „{shortened}“ ist keine Zahl wie 0.82, 0,82 oder 8.2e-1.</translation>
</message>
<message>
<source>The wavelengths end at {max}, as in micrometres. They must be in nanometres: multiply them by 1000.</source>
<translation>Die Wellenlängen enden bei {max}, wie in Mikrometern. Sie müssen in Nanometern sein: mit 1000 malnehmen.</translation>
</message>
<message>
<source>The wavelengths begin at {min}, as in ångström. They must be in nanometres: divide them by 10.</source>
<translation>Die Wellenlängen beginnen bei {min}, wie in Ångström. Sie müssen in Nanometern sein: durch 10 teilen.</translation>
</message>
<message>
<source>Line {line}: a wavelength of {nm} nm lies outside {MIN_WAVELENGTH_NM} to {MAX_WAVELENGTH_NM} nm; visible light is 380 to 780 nm.</source>
<translation>Zeile {line}: eine Wellenlänge von {nm} nm liegt außerhalb von {MIN_WAVELENGTH_NM} bis {MAX_WAVELENGTH_NM} nm; sichtbares Licht ist 380 bis 780 nm.</translation>
</message>
<message>
<source>Lines {lines} and {line} both stand for {nm} nm; keep one of them.</source>
<translation>Die Zeilen {lines} und {line} stehen beide für {nm} nm; eine davon behalten.</translation>
</message>
<message>
<source>Line {line}: {wavelengths} nm stands after {wavelengths2} nm, out of order. Sort the lines by wavelength.</source>
<translation>Zeile {line}: {wavelengths} nm steht nach {wavelengths2} nm, außer der Reihe. Die Zeilen nach Wellenlänge sortieren.</translation>
</message>
<message>
<source>Line {line}: a value of {value} is below 0. Light cannot be negative; if it is the noise of a meter, write 0.</source>
<translation>Zeile {line}: ein Wert von {value} liegt unter 0. Licht kann nicht negativ sein; ist es das Rauschen eines Messgeräts, 0 schreiben.</translation>
</message>
<message>
<source>Line {line}: {value} is larger than any spectrum ({LARGEST_VALUE}).</source>
<translation>Zeile {line}: {value} ist größer als jedes Spektrum ({LARGEST_VALUE}).</translation>
</message>
<message>
<source>The table has {width} columns and no line of names above them. Put a line like 'wavelength (nm);power (W/nm)' first, or keep two columns. If the numbers have a decimal comma, put a semicolon or tab between the columns.</source>
<translation>Die Tabelle hat {width} Spalten und keine Zeile mit Namen darüber. Zuerst eine Zeile wie 'wavelength (nm);power (W/nm)' schreiben oder zwei Spalten behalten. Haben die Zahlen ein Dezimalkomma, die Spalten durch Semikolon oder Tabulator trennen.</translation>
</message>
<message>
<source>The table has no column names</source>
<translation>Die Tabelle hat keine Spaltennamen</translation>
</message>
<message>
<source>NFKC</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The column '{shortened}' does not say its kind</source>
<translation>Die Spalte „{shortened}“ nennt ihre Art nicht</translation>
</message>
<message>
<source>The table holds photons and power; '{shortened}' was taken.</source>
<translation>Die Tabelle enthält Photonen und Leistung; „{shortened}“ wurde genommen.</translation>
</message>
<message>
<source>{reason}: the values were read as power per nm, the usual kind. If they count photons, say so when you open the file.</source>
<translation>{reason}: die Werte wurden als Leistung je nm gelesen, die übliche Art. Zählen sie Photonen, das beim Öffnen der Datei angeben.</translation>
</message>
<message>
<source>Beside '{shortened}' there is no column of values. Name one 'power (W/nm)' or 'photons (µmol/s/nm)'.</source>
<translation>Neben „{shortened}“ gibt es keine Spalte mit Werten. Eine 'power (W/nm)' oder 'photons (µmol/s/nm)' nennen.</translation>
</message>
<message>
<source> and </source>
<translation> und </translation>
</message>
<message>
<source>'{shortened}'</source>
<translation>„{shortened}“</translation>
</message>
<message>
<source>It is not clear which column to read: {names}. Keep one beside the wavelength, or name it 'power (W/nm)' or 'photons (µmol/s/nm)'.</source>
<translation>Es ist nicht klar, welche Spalte zu lesen ist: {names}. Eine neben der Wellenlänge behalten oder sie 'power (W/nm)' oder 'photons (µmol/s/nm)' nennen.</translation>
</message>
<message>
<source>The column '{shortened}' is in micrometres. The wavelengths must be in nanometres: multiply them by 1000 and name the column 'wavelength (nm)'.</source>
<translation>Die Spalte „{shortened}“ ist in Mikrometern. Die Wellenlängen müssen in Nanometern sein: mit 1000 malnehmen und die Spalte 'wavelength (nm)' nennen.</translation>
</message>
<message>
<source>The column '{shortened}' is not in nanometres. Convert it, and name the column 'wavelength (nm)'.</source>
<translation>Die Spalte „{shortened}“ ist nicht in Nanometern. Umrechnen und die Spalte 'wavelength (nm)' nennen.</translation>
</message>
</context>
<context>
<name>planner.command_line</name>
<message>
<source>This system lacks the library {lacks}; {remedy}.</source>
<translation>Diesem System fehlt die Bibliothek {lacks}; {remedy}.</translation>
</message>
<message>
<source>the answer</source>
<translation>die Antwort</translation>
</message>
<message>
<source>'{filename}'</source>
<translation>„{filename}“</translation>
</message>
<message>
<source>The system refuses {what}: {reason_of}.</source>
<translation>Das System verweigert {what}: {reason_of}.</translation>
</message>
<message>
<source>Stopped.</source>
<translation>Angehalten.</translation>
</message>
<message>
<source>{sentence}; '{prog} --help' shows what can be asked.</source>
<translation>{sentence}; '{prog} --help' zeigt, was verlangt werden kann.</translation>
</message>
<message>
<source>Grow space light planner: sketch a small grow space, see the light in it. Without a command the window opens.</source>
<translation>Grow space light planner: einen kleinen Anbauraum skizzieren und das Licht darin sehen. Ohne Befehl öffnet sich das Fenster.</translation>
</message>
<message>
<source>PLAN is a plan file (.plan.json), or the word {DEMO} for the invented demo plan.</source>
<translation>PLAN ist eine Plandatei (.plan.json) oder das Wort {DEMO} für den erfundenen Beispielplan.</translation>
</message>
<message>
<source>--version</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>version</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Grow space light planner {__version__}</source>
<translation>Grow space light planner {__version__}</translation>
</message>
<message>
<source>COMMAND</source>
<translation>BEFEHL</translation>
</message>
<message>
<source>open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>open the window (also without any command)</source>
<translation>das Fenster öffnen (auch ganz ohne Befehl)</translation>
</message>
<message>
<source>plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>PLAN</source>
<translation>PLAN</translation>
</message>
<message>
<source>estimate</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>compute the light of a plan</source>
<translation>das Licht eines Plans berechnen</translation>
</message>
<message>
<source>--cells</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>24x24</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>columns x rows of the map</source>
<translation>Spalten x Zeilen der Karte</translation>
</message>
<message>
<source>--json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>OUT</source>
<translation>ZIEL</translation>
</message>
<message>
<source>write map and figures; - for here</source>
<translation>Karte und Werte schreiben; - für hierher</translation>
</message>
<message>
<source>--csv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>write the map's cells; - for here</source>
<translation>die Zellen der Karte schreiben; - für hierher</translation>
</message>
<message>
<source>--picture</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>OUT.png</source>
<translation>ZIEL.png</translation>
</message>
<message>
<source>paint the map; OUT.svg: as lines</source>
<translation>die Karte malen; ZIEL.svg: als Linien</translation>
</message>
<message>
<source>--unit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>of the lengths in the picture</source>
<translation>der Längen im Bild</translation>
</message>
<message>
<source>check</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>say whether a plan file is valid, and what is odd</source>
<translation>sagen, ob eine Plandatei gültig ist und was auffällt</translation>
</message>
<message>
<source>demo</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>estimate the demo plan and picture the window</source>
<translation>den Beispielplan schätzen und das Fenster abbilden</translation>
</message>
<message>
<source>--out</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>FOLDER</source>
<translation>ORDNER</translation>
</message>
<message>
<source>sweep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>estimate a plan over a range of its numbers</source>
<translation>einen Plan über einen Bereich seiner Zahlen schätzen</translation>
</message>
<message>
<source>lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>look at a photometric file; keep it as own lamp</source>
<translation>eine Lampendatei ansehen; als eigene Lampe behalten</translation>
</message>
<message>
<source>board</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>print the survey board at its true size (PDF)</source>
<translation>das Lochbrett in wahrer Größe drucken (PDF)</translation>
</message>
<message>
<source>report</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>write the decision, or a build sheet, as PDF or HTML</source>
<translation>die Entscheidung oder einen Bauzettel als PDF oder HTML schreiben</translation>
</message>
<message>
<source>schema</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>write the JSON Schema of plan files</source>
<translation>das JSON-Schema der Plandateien schreiben</translation>
</message>
<message>
<source>FILE</source>
<translation>DATEI</translation>
</message>
<message>
<source>There is no option '{first}' before a command; '{program_name} --help' shows what can be asked.</source>
<translation>Vor einem Befehl gibt es keine Option „{first}“; '{program_name} --help' zeigt, was verlangt werden kann.</translation>
</message>
<message>
<source>'{text}' is not a map size; write columns x rows from 2 to {MAX_CELLS}, like 24x24</source>
<translation>„{text}“ ist keine Kartengröße; Spalten x Zeilen von 2 bis {MAX_CELLS} schreiben, zum Beispiel 24x24</translation>
</message>
<message>
<source>no folder is named; write for example planner-demo</source>
<translation>kein Ordner genannt; zum Beispiel planner-demo schreiben</translation>
</message>
<message>
<source>{problem}; start it from a desktop session, or compute without one: {program_name} demo --out FOLDER, or {program_name} estimate PLAN.</source>
<translation>{problem}; aus einer Desktop-Sitzung starten oder ohne Fenster rechnen: {program_name} demo --out ORDNER oder {program_name} estimate PLAN.</translation>
</message>
<message>
<source>There is neither a plan file nor a command '{plan}'; commands are {join}.</source>
<translation>Es gibt weder eine Plandatei noch einen Befehl „{plan}“; Befehle sind {join}.</translation>
</message>
<message>
<source>'{plan}' is a valid plan: {_contents}.</source>
<translation>„{plan}“ ist ein gültiger Plan: {_contents}.</translation>
</message>
<message>
<source>{capitalize}: {sentence}</source>
<translation>{capitalize}: {sentence}</translation>
</message>
<message>
<source>Only one of --json and --csv can be written here; name a file for one.</source>
<translation>Nur eines von --json und --csv kann hierher geschrieben werden; für eines eine Datei nennen.</translation>
</message>
<message>
<source>A picture cannot be written here; name a file like map.png.</source>
<translation>Ein Bild kann nicht hierher geschrieben werden; eine Datei wie map.png nennen.</translation>
</message>
<message>
<source>The folder '{folder}' cannot be made: {reason_of}.</source>
<translation>Der Ordner „{folder}“ lässt sich nicht anlegen: {reason_of}.</translation>
</message>
<message>
<source>window.png</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>estimate.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>estimate.csv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>map.png</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Wrote {resolve} (the program's window with the demo plan)</source>
<translation>Geschrieben: {resolve} (das Programmfenster mit dem Beispielplan)</translation>
</message>
<message>
<source>{capital}</source>
<translation>{capital}</translation>
</message>
<message>
<source>Wrote {resolve}</source>
<translation>Geschrieben: {resolve}</translation>
</message>
<message>
<source>schema/plan-{PLAN_FORMAT}.schema.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>utf-8</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>$schema</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>title</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>https://json-schema.org/draft/2020-12/schema</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Grow space light planner: plan, format {PLAN_FORMAT}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>format</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>  {label}{text}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Where the photons went:</source>
<translation>Wohin die Photonen gingen:</translation>
</message>
<message>
<source>  {name}{percent}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Map of {nx} x {ny} cells, quality {word}, seed {seed}, {seconds} s.</source>
<translation>Karte aus {nx} x {ny} Zellen, Qualität {word}, Startzahl {seed}, {seconds} s.</translation>
</message>
<message>
<source>open a plan in the window and import its readings on the page Survey</source>
<translation>einen Plan im Fenster öffnen und die Messwerte auf der Seite Messung importieren</translation>
</message>
<message>
<source>'{program_name} lamp {word}' shows it and can keep it among your lamps</source>
<translation>'{program_name} lamp {word}' zeigt sie und kann sie unter Ihren Lampen behalten</translation>
</message>
<message>
<source>'{word}' is a {kind}, not a plan; {door}.</source>
<translation>„{word}“ ist kein Plan, sondern: {kind}; {door}.</translation>
</message>
<message>
<source>{name}, {lamps} lamp{value}, {walls} walls, {area} m²</source>
<translation>{name}, {lamps} Lampe{value}, {walls} Wände, {area} m²</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>This plan cannot be estimated: {error}</source>
<translation>Dieser Plan lässt sich nicht schätzen: {error}</translation>
</message>
<message>
<source>linux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>QT_QPA_PLATFORM</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>offscreen</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>replace</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.commands</name>
<message>
<source>demo</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>python -m planner</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{text}' is not a seed; write a whole number from 0 up</source>
<translation>„{text}“ ist keine Startzahl; eine ganze Zahl ab 0 schreiben</translation>
</message>
<message>
<source>--quality</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>preview</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>default</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fine</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>--seed</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>N</source>
<translation>N</translation>
</message>
<message>
<source>of the random part</source>
<translation>Startzahl des zufälligen Teils</translation>
</message>
<message>
<source>plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>PLAN</source>
<translation>PLAN</translation>
</message>
<message>
<source>--out</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>FILE.pdf</source>
<translation>DATEI.pdf</translation>
</message>
<message>
<source>write the board here</source>
<translation>das Lochbrett hierhin schreiben</translation>
</message>
<message>
<source>--paper</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a4</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>letter</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>--survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>number of the plan's survey, counted from 1</source>
<translation>Nummer der Messung im Plan, ab 1 gezählt</translation>
</message>
<message>
<source>--unit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>of the lengths written</source>
<translation>der geschriebenen Längen</translation>
</message>
<message>
<source>{len} holes {whose}</source>
<translation>{len} Löcher {whose}</translation>
</message>
<message>
<source>Wrote {path} ({holes}; print at 100 %, without fitting)</source>
<translation>Geschrieben: {path} ({holes}; mit 100 % drucken, ohne Anpassen)</translation>
</message>
<message>
<source>.html</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.htm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>FILE.pdf|FILE.html</source>
<translation>DATEI.pdf|DATEI.html</translation>
</message>
<message>
<source>write the report here</source>
<translation>den Bericht hierhin schreiben</translation>
</message>
<message>
<source>--sections</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A,B</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>only these, in the report's own order: decision, plan, light, colours, figures, options, survey, budget, schedule, build (the build sheet), assumptions, cautions</source>
<translation>nur diese, in der Reihenfolge des Berichts: decision (Entscheidung), plan (Grundriss), light (Licht), colours (Farben), figures (Werte), options (Varianten), survey (Messung), budget, schedule (Zeitplan), build (der Bauzettel), assumptions (Annahmen), cautions (Warnhinweise)</translation>
</message>
<message>
<source>of a PDF</source>
<translation>eines PDF</translation>
</message>
<message>
<source>'{out}' does not say what to write; name a file .pdf or .html.</source>
<translation>„{out}“ sagt nicht, was zu schreiben ist; eine Datei .pdf oder .html nennen.</translation>
</message>
<message>
<source>This plan cannot be estimated: {error}</source>
<translation>Dieser Plan lässt sich nicht schätzen: {error}</translation>
</message>
<message>
<source>Wrote {resolve} ({titles})</source>
<translation>Geschrieben: {resolve} ({titles})</translation>
</message>
<message>
<source>file</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>FILE</source>
<translation>DATEI</translation>
</message>
<message>
<source>IES LM-63 or EULUMDAT file</source>
<translation>Datei in IES LM-63 oder EULUMDAT</translation>
</message>
<message>
<source>--lm63</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>OUT</source>
<translation>ZIEL</translation>
</message>
<message>
<source>write it back as LM-63-2019</source>
<translation>als LM-63-2019 zurückschreiben</translation>
</message>
<message>
<source>--save-as</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>NAME</source>
<translation>NAME</translation>
</message>
<message>
<source>keep it among your own lamps</source>
<translation>unter Ihren eigenen Lampen behalten</translation>
</message>
<message>
<source>--ppf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>UMOL</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photon flux in {FLUX_UNIT}</source>
<translation>Photonenfluss in {FLUX_UNIT}</translation>
</message>
<message>
<source>--spectrum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>KEY</source>
<translation>SCHLÜSSEL</translation>
</message>
<message>
<source>compute the photon flux from the lumens and a spectrum</source>
<translation>den Photonenfluss aus Lumen und einem Spektrum berechnen</translation>
</message>
<message>
<source>--watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>W</source>
<translation>W</translation>
</message>
<message>
<source>electrical power, if not in file</source>
<translation>elektrische Leistung, wenn sie in der Datei fehlt</translation>
</message>
<message>
<source>--quarter-turns</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>turn about the vertical</source>
<translation>um die Senkrechte drehen</translation>
</message>
<message>
<source>{what}  {value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Note: {warning}</source>
<translation>Hinweis: {warning}</translation>
</message>
<message>
<source>'{path}' could not be written: {error}</source>
<translation>„{path}“ konnte nicht geschrieben werden: {error}</translation>
</message>
<message>
<source>Wrote {path}</source>
<translation>Geschrieben: {path}</translation>
</message>
<message>
<source>The file tells how the light is spread, not how many photons there are; give --ppf, or --spectrum to compute them from the lumens.</source>
<translation>Die Datei sagt, wie sich das Licht verteilt, nicht wie viele Photonen es sind; --ppf angeben, oder --spectrum, um sie aus den Lumen zu berechnen.</translation>
</message>
<message>
<source>Lamp file {name}</source>
<translation>Lampendatei {name}</translation>
</message>
<message>
<source>Kept as own lamp '{name}': {flux}, {watts}</source>
<translation>Als eigene Lampe behalten: „{name}“, {flux}, {watts}</translation>
</message>
<message>
<source>There is no spectrum '{key}'; known are {join}.</source>
<translation>Es gibt kein Spektrum „{key}“; bekannt sind {join}.</translation>
</message>
<message>
<source>--over</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>append</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>NAME[@PLACE]=FROM:TO:COUNT</source>
<translation>NAME[@STELLE]=VON:BIS:ANZAHL</translation>
</message>
<message>
<source>NAME is lining, lamp or any number of the plan (height, output, canopy, ...; a wrong one lists them), with a place behind it where only one is meant (output@lamp-2, lining@ceiling); NAME=A,B,C works too, for linings and lamps their keys or 'all'; lengths in m or with a unit, shares (output, dust, dirt) in per cent; more than one --over makes a grid</source>
<translation>NAME ist lining (Auskleidung), lamp (Lampe) oder eine Zahl des Plans (height, output, canopy, ...; ein falscher zählt sie auf), dahinter eine Stelle, wenn nur eine gemeint ist (output@lamp-2, lining@ceiling); auch NAME=A,B,C geht, bei Auskleidungen und Lampen ihre Schlüssel oder 'all'; Längen in m oder mit Einheit, Anteile (output, dust, dirt) in Prozent; mehrere --over ergeben ein Gitter</translation>
</message>
<message>
<source>--csv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>one line a point; - for here</source>
<translation>eine Zeile je Punkt; - für hierher</translation>
</message>
<message>
<source>--workers</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>processes; without it one per core</source>
<translation>Prozesse; ohne Angabe einer je Kern</translation>
</message>
<message>
<source>--scheduler</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ADDRESS</source>
<translation>ADRESSE</translation>
</message>
<message>
<source>of a Dask scheduler (needs the extra 'cluster')</source>
<translation>eines Dask-Schedulers (braucht das Extra 'cluster')</translation>
</message>
<message>
<source>--workers {workers} makes no sense; write 0 to 64.</source>
<translation>--workers {workers} ist nicht sinnvoll; 0 bis 64 schreiben.</translation>
</message>
<message>
<source>{csv}.points</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Stopped; what was finished is in '{journal}', and the same command goes on from there.</source>
<translation>Angehalten; was fertig war, steht in „{journal}“, und derselbe Befehl macht dort weiter.</translation>
</message>
<message>
<source>Wrote {resolve} ({size} points)</source>
<translation>Geschrieben: {resolve} ({size} Punkte)</translation>
</message>
<message>
<source>{len} of {size} points cannot be, the first because: {problem}</source>
<translation>{len} von {size} Punkten gehen nicht, der erste, weil: {problem}</translation>
</message>
<message>
<source>Standard output is closed; name a file instead of '-'.</source>
<translation>Die Standardausgabe ist geschlossen; statt '-' eine Datei nennen.</translation>
</message>
<message>
<source>'{out}' cannot be written: {reason_of}.</source>
<translation>„{out}“ lässt sich nicht schreiben: {reason_of}.</translation>
</message>
<message>
<source>{out} is not a name a file can have.</source>
<translation>{out} kann keine Datei heißen.</translation>
</message>
<message>
<source>'{out}' is a folder; name a file in it.</source>
<translation>„{out}“ ist ein Ordner; eine Datei darin nennen.</translation>
</message>
<message>
<source>'{out}' cannot be written: there is no folder '{parent}'.</source>
<translation>„{out}“ lässt sich nicht schreiben: es gibt keinen Ordner „{parent}“.</translation>
</message>
<message>
<source>'{out}' is the plan itself; name another file to write to.</source>
<translation>„{out}“ ist der Plan selbst; eine andere Datei nennen.</translation>
</message>
<message>
<source>'{out}' is named for two outputs; give each its own file.</source>
<translation>„{out}“ ist für zwei Ausgaben genannt; jeder eine eigene Datei geben.</translation>
</message>
<message>
<source>{name} is not a name a file can have.</source>
<translation>{name} kann keine Datei heißen.</translation>
</message>
</context>
<context>
<name>planner.estimate.calibrate</name>
<message>
<source>a survey's conditions do not fit the plan: {error}</source>
<translation>die Bedingungen einer Messung passen nicht zum Plan: {error}</translation>
</message>
<message>
<source>these surveys hold no readings with light; read some first.</source>
<translation>diese Messungen enthalten keine Messwerte mit Licht; zuerst messen.</translation>
</message>
<message>
<source>{readings} readings cannot tell {free} unknowns; read more holes or free fewer.</source>
<translation>{readings} Messwerte können {free} Unbekannte nicht bestimmen; mehr Löcher messen oder weniger freigeben.</translation>
</message>
<message>
<source>bvls</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>leaving one out needs at least two surveys.</source>
<translation>eine wegzulassen braucht mindestens zwei Messungen.</translation>
</message>
<message>
<source>'{name}' cannot be predicted: {why}</source>
<translation>„{name}“ lässt sich nicht vorhersagen: {why}</translation>
</message>
<message>
<source>it holds no readings with light.</source>
<translation>sie enthält keine Messwerte mit Licht.</translation>
</message>
<message>
<source>above</source>
<translation>über</translation>
</message>
<message>
<source>below</source>
<translation>unter</translation>
</message>
<message>
<source> No other survey has its lining, so this tests lamp and meter of the others together with the listed reflectance of '{name}', {percent}.</source>
<translation> Keine andere Messung hat ihre Auskleidung, also prüft dies Lampe und Messgerät der anderen zusammen mit dem angegebenen Reflexionsgrad von „{name}“, {percent}.</translation>
</message>
<message>
<source>'{name}' reads {value} % {way} what the other surveys predict, and scatters by {value2} % about that.{listed}</source>
<translation>„{name}“ liegt {value} % {way} dem, was die anderen Messungen vorhersagen, und streut darum um {value2} %.{listed}</translation>
</message>
</context>
<context>
<name>planner.estimate.calibrate_checks</name>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rim</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>time</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>on the left</source>
<translation>links</translation>
</message>
<message>
<source>on the right</source>
<translation>rechts</translation>
</message>
<message>
<source>on the near side</source>
<translation>auf der nahen Seite</translation>
</message>
<message>
<source>on the far side</source>
<translation>auf der fernen Seite</translation>
</message>
<message>
<source>in the middle</source>
<translation>in der Mitte</translation>
</message>
<message>
<source>at the rim</source>
<translation>am Rand</translation>
</message>
<message>
<source>at first</source>
<translation>am Anfang</translation>
</message>
<message>
<source>at last</source>
<translation>am Ende</translation>
</message>
<message>
<source>The readings of '{name}' scatter {ratio} times as much as stated about the fit: something was not as it is written down.</source>
<translation>Die Messwerte von „{name}“ streuen {ratio}-mal so stark wie angegeben um die Anpassung: etwas war nicht so, wie es notiert ist.</translation>
</message>
<message>
<source> and others</source>
<translation> und andere</translation>
</message>
<message>
<source>In '{name}' hole {listed}{more} stands out: read it again.</source>
<translation>In „{name}“ fällt Loch {listed}{more} auf: neu messen.</translation>
</message>
<message>
<source>'{name}' reads about {value} % more {where} than {other}, against the fit; noise does not explain that.</source>
<translation>„{name}“ misst {where} etwa {value} % mehr als {other}, entgegen der Anpassung; Rauschen erklärt das nicht.</translation>
</message>
<message>
<source>{value} %</source>
<translation>{value} %</translation>
</message>
<message>
<source>more</source>
<translation>mehr</translation>
</message>
<message>
<source>less</source>
<translation>weniger</translation>
</message>
<message>
<source>The fit asks for {by} {way} than written: {_doubt}.</source>
<translation>Die Anpassung verlangt {by} {way} als notiert: {_doubt}.</translation>
</message>
<message>
<source>noise and placement of the readings</source>
<translation>Rauschen und Platzierung der Messwerte</translation>
</message>
<message>
<source>Known twice as well, the {_doubt} would take its error to {percent} of that.</source>
<translation>Wäre dies doppelt so genau bekannt – {_doubt} –, sänke der Fehler auf {percent} davon.</translation>
</message>
<message>
<source>± {said_length}</source>
<translation>± {said_length}</translation>
</message>
<message>
<source>± {value} %</source>
<translation>± {value} %</translation>
</message>
<message>
<source>photon flux of the lamp</source>
<translation>Photonenfluss der Lampe</translation>
</message>
<message>
<source>gain of the meter</source>
<translation>Kalibrierfaktor des Messgeräts</translation>
</message>
<message>
<source>height of the sensor</source>
<translation>Höhe des Sensors</translation>
</message>
<message>
<source>meter's response to light from all sides</source>
<translation>Empfindlichkeit des Messgeräts für Licht von allen Seiten</translation>
</message>
<message>
<source>output of the lamps set up anew</source>
<translation>Leistung der neu aufgebauten Lampen</translation>
</message>
<message>
<source>drift of the lamps</source>
<translation>Drift der Lampen</translation>
</message>
<message>
<source>reflectance of the board</source>
<translation>Reflexionsgrad des Lochbretts</translation>
</message>
<message>
<source>gap of the door</source>
<translation>Spalt der Tür</translation>
</message>
<message>
<source> in '{name}'</source>
<translation> in „{name}“</translation>
</message>
<message>
<source> '{of}'</source>
<translation> „{of}“</translation>
</message>
<message>
<source>{words} ({size})</source>
<translation>{words} ({size})</translation>
</message>
</context>
<context>
<name>planner.estimate.calibrate_model</name>
<message>
<source>the canopy that the survey was read on gets no light that can be reckoned: it lies under the closed canopy.</source>
<translation>auf das Blätterdach, auf dem gemessen wurde, fällt kein Licht, das sich berechnen lässt: Es liegt unter dem geschlossenen Blätterdach.</translation>
</message>
</context>
<context>
<name>planner.estimate.calibrate_parameters</name>
<message>
<source>no lamp gives light in these surveys; hang one first.</source>
<translation>keine Lampe gibt in diesen Messungen Licht; zuerst eine aufhängen.</translation>
</message>
<message>
<source>Nobody said what the board of '{name}' was made of, so the canopy it was read on was taken for it; say it in the record.</source>
<translation>Niemand hat gesagt, woraus das Lochbrett von „{name}“ war, also wurde dafür das Blätterdach genommen, auf dem es lag; im Protokoll angeben.</translation>
</message>
<message>
<source>No hole sees the lamp flatter than {angles}°; what it sends there was taken to go down as the cosine, and the photon flux depends on that.</source>
<translation>Kein Loch sieht die Lampe flacher als {angles}°; was sie dorthin sendet, wurde als wie der Kosinus abfallend genommen, und der Photonenfluss hängt davon ab.</translation>
</message>
<message>
<source>a free polar curve needs at least {CURVE_HOLES} holes in open air that see the lamp at up to {CURVE_ANGLE_DEG}°; here are {holes}, up to {flattest}°. Fit an exponent instead, or read farther out or with the lamp lower.</source>
<translation>eine freie Polarkurve braucht mindestens {CURVE_HOLES} Löcher im Freien, die die Lampe bis {CURVE_ANGLE_DEG}° sehen; hier sind es {holes}, bis {flattest}°. Stattdessen einen Exponenten anpassen, oder weiter außen oder mit tieferer Lampe messen.</translation>
</message>
<message>
<source>lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>no survey was read with the lining '{key}' on a lit surface, so nothing tells its reflectance.</source>
<translation>keine Messung wurde mit der Auskleidung „{key}“ auf einer beleuchteten Fläche gemacht, also sagt nichts ihren Reflexionsgrad.</translation>
</message>
</context>
<context>
<name>planner.estimate.calibrate_result</name>
<message>
<source>{label} ends at its bound: the readings ask for what cannot be.</source>
<translation>{label} endet an der Grenze: die Messwerte verlangen, was nicht sein kann.</translation>
</message>
<message>
<source>{label}: {advice}</source>
<translation>{label}: {advice}</translation>
</message>
<message>
<source>'{name}': {value} % rms between readings and estimate before, {value2} % after.</source>
<translation>„{name}“: {value} % rms zwischen Messwerten und Schätzung vorher, {value2} % nachher.</translation>
</message>
<message>
<source>{capitalize} of {name}</source>
<translation>{capitalize} von {name}</translation>
</message>
<message>
<source>Photon flux of {name}</source>
<translation>Photonenfluss von {name}</translation>
</message>
<message>
<source>m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lamps' shift along {value}</source>
<translation>Verschiebung der Lampen längs {value}</translation>
</message>
<message>
<source>Beam of {name}</source>
<translation>Abstrahlung von {name}</translation>
</message>
<message>
<source>Fall of intensity of {name} from {low}° to {high}°</source>
<translation>Abfall der Lichtstärke von {name} von {low}° bis {high}°</translation>
</message>
<message>
<source>{label}: {told} ± {doubt} (standard error)</source>
<translation>{label}: {told} ± {doubt} (Standardfehler)</translation>
</message>
<message>
<source>{figures}: not identifiable, these readings do not tell it.</source>
<translation>{figures}: nicht bestimmbar, diese Messwerte sagen es nicht.</translation>
</message>
<message>
<source>most</source>
<translation>höchstens</translation>
</message>
<message>
<source>least</source>
<translation>mindestens</translation>
</message>
<message>
<source>{label}: at {way} {reach} (95 %); the fit lies at its bound {said}, where no standard error can be given.</source>
<translation>{label}: {way} {reach} (95 %); die Anpassung liegt an der Grenze {said}, wo sich kein Standardfehler angeben lässt.</translation>
</message>
<message>
<source>{figures}.</source>
<translation>{figures}.</translation>
</message>
<message>
<source>{value} %</source>
<translation>{value} %</translation>
</message>
<message>
<source>{value}°</source>
<translation>{value}°</translation>
</message>
<message>
<source>{beam_deg}°</source>
<translation>{beam_deg}°</translation>
</message>
<message>
<source>{value} {FLUX_UNIT}</source>
<translation>{value} {FLUX_UNIT}</translation>
</message>
<message>
<source>{value}</source>
<translation>{value}</translation>
</message>
<message>
<source>'{name}'</source>
<translation>„{name}“</translation>
</message>
<message>
<source>'{of}'</source>
<translation>„{of}“</translation>
</message>
<message>
<source>the lamps</source>
<translation>den Lampen</translation>
</message>
<message>
<source>{label} and {inside} go together (correlation {correlation}): the readings tell one in the light of the other, not each by itself.</source>
<translation>{label} und {inside} hängen zusammen (Korrelation {correlation}): die Messwerte sagen das eine im Licht des anderen, nicht jedes für sich.</translation>
</message>
<message>
<source>The readings scatter about the fit as much as their stated noise lets expect, or less, in each survey.</source>
<translation>Die Messwerte streuen um die Anpassung so stark, wie ihr angegebenes Rauschen erwarten lässt, oder weniger, in jeder Messung.</translation>
</message>
<message>
<source>Calibrated {isoformat} from {_read}. {said}.</source>
<translation>Abgeglichen {isoformat} aus {_read}. {said}.</translation>
</message>
<message>
<source>Value error, </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The calibrated lamp '{name}' cannot be kept: {why}</source>
<translation>Die abgeglichene Lampe „{name}“ kann nicht behalten werden: {why}</translation>
</message>
<message>
<source> Specular share held at {percent}.</source>
<translation> Spiegelanteil festgehalten bei {percent}.</translation>
</message>
<message>
<source>reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>specular_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>source</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Effective reflectance, calibrated {isoformat} from {_read}. {said}.{fixed}</source>
<translation>Wirksamer Reflexionsgrad, abgeglichen {isoformat} aus {_read}. {said}.{fixed}</translation>
</message>
<message>
<source>{readings} readings of {names}</source>
<translation>{readings} Messwerten von {names}</translation>
</message>
<message>
<source>{name} (calibrated {day})</source>
<translation>{name} (abgeglichen {day})</translation>
</message>
<message>
<source>DAY</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>[\d-]+</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>key</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>model</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{stem}-{date}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.canopies</name>
<message>
<source>{name} over its band</source>
<translation>{name} über dem Zielbereich</translation>
</message>
<message>
<source>{name} under its band</source>
<translation>{name} unter dem Zielbereich</translation>
</message>
<message>
<source>the plan's own canopy</source>
<translation>das eigene Blätterdach des Plans</translation>
</message>
<message>
<source>{name} (obstacle {value})</source>
<translation>{name} (Hindernis {value})</translation>
</message>
</context>
<context>
<name>planner.estimate.cluster</name>
<message>
<source>No Dask scheduler answers at '{address}'; start one with 'dask scheduler' and name its address, for example tcp://192.0.2.7:8786.</source>
<translation>Bei „{address}“ antwortet kein Dask-Scheduler; einen mit 'dask scheduler' starten und seine Adresse nennen, zum Beispiel tcp://192.0.2.7:8786.</translation>
</message>
<message>
<source>No worker is at</source>
<translation>Kein Worker ist bei</translation>
</message>
<message>
<source>start one with 'dask worker {address}'</source>
<translation>einen mit 'dask worker {address}' starten</translation>
</message>
<message>
<source>start workers with more (--memory-limit) or ask for a lower quality</source>
<translation>Worker mit mehr starten (--memory-limit) oder geringere Qualität verlangen</translation>
</message>
<message>
<source>All workers are paused, short of memory, at</source>
<translation>Alle Worker pausieren aus Speichermangel, bei</translation>
</message>
<message>
<source>{what} the scheduler '{_address}'; {remedy}. {_GO_ON}</source>
<translation>{what} dem Scheduler „{_address}“; {remedy}. {_GO_ON}</translation>
</message>
<message>
<source>What was finished is kept; ask for the same sweep to go on.</source>
<translation>Was fertig war, ist behalten; dieselbe Reihe noch einmal verlangen, um weiterzumachen.</translation>
</message>
<message>
<source>The scheduler '{address}' is gone, or somebody took the points from it. {_GO_ON}</source>
<translation>Der Scheduler „{address}“ ist weg, oder jemand hat ihm die Punkte genommen. {_GO_ON}</translation>
</message>
<message>
<source>The same points were lost with several workers one after another, probably for want of memory; start them with more or ask for a lower quality. {_GO_ON}</source>
<translation>Dieselben Punkte gingen bei mehreren Workern nacheinander verloren, wohl aus Speichermangel; sie mit mehr starten oder geringere Qualität verlangen. {_GO_ON}</translation>
</message>
<message>
<source>A worker of the scheduler failed ({__name__}: {error}); this program must be installed there in the same version.</source>
<translation>Ein Worker des Schedulers ist gescheitert ({__name__}: {error}); dieses Programm muss dort in derselben Version installiert sein.</translation>
</message>
<message>
<source>Computing on a Dask scheduler needs the optional extra 'cluster': install it with pip install 'grow-space-light-planner[cluster]', or leave --scheduler out.</source>
<translation>Rechnen auf einem Dask-Scheduler braucht das Extra 'cluster': installieren mit pip install 'grow-space-light-planner[cluster]', oder --scheduler weglassen.</translation>
</message>
</context>
<context>
<name>planner.estimate.compare</name>
<message>
<source>Open air (no walls)</source>
<translation>Im Freien (keine Wände)</translation>
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>no walls, no ceiling</source>
<translation>keine Wände, keine Decke</translation>
</message>
<message>
<source>'{name}' cannot be estimated: {error}</source>
<translation>„{name}“ lässt sich nicht schätzen: {error}</translation>
</message>
<message>
<source>ignore</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>money</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name} ({unit})</source>
<translation>{name} ({unit})</translation>
</message>
<message>
<source>{value}</source>
<translation>{value}</translation>
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>of_base</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Of baseline</source>
<translation>Zur Basis</translation>
</message>
<message>
<source>Mean PPFD over the baseline's.</source>
<translation>Mittlere PPFD durch die der Basis.</translation>
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inside_all</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>All canopies inside</source>
<translation>Alle im Zielbereich</translation>
</message>
<message>
<source>Share of all canopies together whose light lies inside the band wanted there.</source>
<translation>Anteil aller Blätterdächer zusammen, deren Licht in dem dort gewünschten Bereich liegt.</translation>
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Energy a month</source>
<translation>Energie im Monat</translation>
</message>
<message>
<source>kWh</source>
<translation>kWh</translation>
</message>
<message>
<source>Of a month at the hours of the option.</source>
<translation>Eines Monats bei den Stunden der Variante.</translation>
</message>
<message>
<source>Running</source>
<translation>Laufend</translation>
</message>
<message>
<source>money/month</source>
<translation>money/Monat</translation>
</message>
<message>
<source>The energy of a month at the tariff.</source>
<translation>Die Energie eines Monats zum Tarif.</translation>
</message>
<message>
<source>cost</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>To buy</source>
<translation>Zu kaufen</translation>
</message>
<message>
<source>All that the baseline does not have already.</source>
<translation>Alles, was die Basis nicht schon hat.</translation>
</message>
<message>
<source>total</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Total</source>
<translation>Gesamt</translation>
</message>
<message>
<source>To buy, and the energy of the span chosen.</source>
<translation>Zu kaufen, und die Energie der gewählten Zeit.</translation>
</message>
<message>
<source>payback</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Payback</source>
<translation>Amortisation</translation>
</message>
<message>
<source>months</source>
<translation>Monate</translation>
</message>
<message>
<source>When what is bought is paid by what is saved while the option gives the baseline's light of a day.</source>
<translation>Wann das Gekaufte durch das Gesparte bezahlt ist, während die Variante das Tageslicht der Basis gibt.</translation>
</message>
<message>
<source>dli_low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>DLI at least</source>
<translation>DLI mindestens</translation>
</message>
<message>
<source>Light of a day.</source>
<translation>Licht eines Tages.</translation>
</message>
<message>
<source>the light</source>
<translation>das Licht</translation>
</message>
<message>
<source>dli_high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>DLI at most</source>
<translation>DLI höchstens</translation>
</message>
<message>
<source>the upper end of the light</source>
<translation>das obere Ende des Lichts</translation>
</message>
<message>
<source>Min / mean at least</source>
<translation>Min/Mittel mindestens</translation>
</message>
<message>
<source>How even the light is.</source>
<translation>Wie gleichmäßig das Licht ist.</translation>
</message>
<message>
<source>the evenness</source>
<translation>die Gleichmäßigkeit</translation>
</message>
<message>
<source>Power at most</source>
<translation>Leistung höchstens</translation>
</message>
<message>
<source>What the lamps draw.</source>
<translation>Was die Lampen aufnehmen.</translation>
</message>
<message>
<source>the power</source>
<translation>die Leistung</translation>
</message>
<message>
<source>Total at most</source>
<translation>Gesamt höchstens</translation>
</message>
<message>
<source>To buy and the energy of the span.</source>
<translation>Zu kaufen und die Energie der Zeit.</translation>
</message>
<message>
<source>the total</source>
<translation>die Gesamtkosten</translation>
</message>
<message>
<source>{name} is not known</source>
<translation>{name} ist nicht bekannt</translation>
</message>
<message>
<source>under</source>
<translation>unter</translation>
</message>
<message>
<source>over</source>
<translation>über</translation>
</message>
<message>
<source>{name} {text} is {word} {text2}</source>
<translation>{name} {text} liegt {word} {text2}</translation>
</message>
<message>
<source>of one option only</source>
<translation>nur für eine Variante</translation>
</message>
<message>
<source>of any option</source>
<translation>für die Varianten</translation>
</message>
<message>
<source>{name} is {value}known {of}; energy stands for it. </source>
<translation>„{name}“ ist {of} {value}bekannt; dafür steht die Energie. </translation>
</message>
<message>
<source>not </source>
<translation>nicht </translation>
</message>
<message>
<source>a price</source>
<translation>ein Preis</translation>
</message>
<message>
<source>{missing} of {len} cannot be shown: {why} is missing.</source>
<translation>{missing} von {len} nicht darstellbar: {why} fehlt.</translation>
</message>
<message>
<source>, {span_months} months</source>
<translation>, {span_months} Monate</translation>
</message>
</context>
<context>
<name>planner.estimate.diagnose</name>
<message>
<source>None of the usual mistakes explains these readings better than the plan does.</source>
<translation>Keiner der üblichen Fehler erklärt diese Messwerte besser als der Plan.</translation>
</message>
<message>
<source>The readings agree {times} times better if {words}.</source>
<translation>Die Messwerte passen {times}-mal besser, wenn man annimmt: {words}.</translation>
</message>
<message>
<source>The readings fit the plan as it is if {words}.</source>
<translation>Die Messwerte passen zum Plan, wie er ist, wenn {words}.</translation>
</message>
<message>
<source> or </source>
<translation> oder </translation>
</message>
<message>
<source> It would explain them nearly as well that {others}.</source>
<translation> Fast so gut erklärte sie: {others}.</translation>
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>board_reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>drift</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>door</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>order {words}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>those of '{name}' are taken {words}</source>
<translation>die von „{name}“ gelten {words}</translation>
</message>
<message>
<source>mirrored left to right</source>
<translation>links und rechts gespiegelt</translation>
</message>
<message>
<source>Mirror</source>
<translation>Spiegeln</translation>
</message>
<message>
<source>with near and far exchanged</source>
<translation>mit nah und fern vertauscht</translation>
</message>
<message>
<source>turned half round</source>
<translation>um eine halbe Drehung gedreht</translation>
</message>
<message>
<source>Turn</source>
<translation>Drehen</translation>
</message>
<message>
<source>with rows and columns exchanged</source>
<translation>mit Zeilen und Spalten vertauscht</translation>
</message>
<message>
<source>Exchange</source>
<translation>Vertauschen</translation>
</message>
<message>
<source>turned a quarter to the left</source>
<translation>um ein Viertel nach links gedreht</translation>
</message>
<message>
<source>turned a quarter to the right</source>
<translation>um ein Viertel nach rechts gedreht</translation>
</message>
<message>
<source>row by row, all from the left</source>
<translation>zeilenweise, alle von links</translation>
</message>
<message>
<source>Reorder</source>
<translation>Umordnen</translation>
</message>
<message>
<source>hole</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the beam of '{name}' is {found}° wide, not {planned}° as planned</source>
<translation>die Abstrahlung von „{name}“ ist {found}° breit, nicht {planned}° wie geplant</translation>
</message>
<message>
<source>words</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>remedy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>profile</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Use in the plan</source>
<translation>Im Plan verwenden</translation>
</message>
<message>
<source>higher</source>
<translation>höher</translation>
</message>
<message>
<source>lower</source>
<translation>tiefer</translation>
</message>
<message>
<source>the lamps hung {said_length} {way} in '{name}' than written</source>
<translation>die Lampen hingen in „{name}“ {said_length} {way} als notiert</translation>
</message>
<message>
<source>Measure again</source>
<translation>Neu messen</translation>
</message>
<message>
<source>Set height</source>
<translation>Höhe setzen</translation>
</message>
<message>
<source>the board in '{name}' reflected {percent}</source>
<translation>das Lochbrett in „{name}“ reflektierte {percent}</translation>
</message>
<message>
<source>Set board</source>
<translation>Lochbrett setzen</translation>
</message>
<message>
<source>more</source>
<translation>mehr</translation>
</message>
<message>
<source>less</source>
<translation>weniger</translation>
</message>
<message>
<source>the lamps gave {value} % {way} in '{name}'</source>
<translation>die Lampen gaben in „{name}“ {value} % {way}</translation>
</message>
<message>
<source>Doubt output</source>
<translation>Leistung anzweifeln</translation>
</message>
<message>
<source>Set output</source>
<translation>Leistung setzen</translation>
</message>
<message>
<source>rose</source>
<translation>stärker</translation>
</message>
<message>
<source>fell</source>
<translation>schwächer</translation>
</message>
<message>
<source>the lamps {way} by {value} % during '{name}'</source>
<translation>die Lampen wurden während „{name}“ um {value} % {way}</translation>
</message>
<message>
<source>Allow for drift</source>
<translation>Drift zulassen</translation>
</message>
<message>
<source>{percent} of the door's wall stood open in '{name}'</source>
<translation>{percent} der Türwand standen in „{name}“ offen</translation>
</message>
<message>
<source>Allow for the door</source>
<translation>Offene Tür zulassen</translation>
</message>
<message>
<source>ij,ji-&gt;i</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>aside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the reading of hole {hole} of '{name}' is left out</source>
<translation>der Messwert von Loch {hole} von „{name}“ wird weggelassen</translation>
</message>
<message>
<source>Set hole {hole} aside</source>
<translation>Loch {hole} beiseitelegen</translation>
</message>
<message>
<source>'{name}' is left out altogether</source>
<translation>„{name}“ wird ganz weggelassen</translation>
</message>
<message>
<source>survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Read again</source>
<translation>Neu messen</translation>
</message>
</context>
<context>
<name>planner.estimate.evaluate</name>
<message>
<source>open_to_sight</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>geometry</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>paths</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>balance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>coarser</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>response</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.find</name>
<message>
<source>{set_up} {capital}.</source>
<translation>{set_up} {capital}.</translation>
</message>
<message>
<source>lamps</source>
<translation>Lampen</translation>
</message>
<message>
<source>So many lamps do not fit side by side in the footprint; ask for fewer.</source>
<translation>So viele Lampen passen nicht nebeneinander in den Grundriss; weniger verlangen.</translation>
</message>
<message>
<source>The lamps would be in the way of each other, of a wall or of a shelf at every height tried; let their places be turned as well, or fewer hang.</source>
<translation>In jeder geprüften Höhe wären die Lampen einander, einer Wand oder einem Regalbrett im Weg; auch ihre Plätze verändern lassen, oder weniger aufhängen.</translation>
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>found-{len}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{count} lamp{value}</source>
<translation>{count} Lampe{value}</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>As placed</source>
<translation>Wie gehängt</translation>
</message>
<message>
<source>Moved</source>
<translation>Versetzt</translation>
</message>
<message>
<source>{value} %</source>
<translation>{value} %</translation>
</message>
<message>
<source>{hours} h</source>
<translation>{hours} h</translation>
</message>
<message>
<source>As lined</source>
<translation>Wie ausgekleidet</translation>
</message>
<message>
<source>lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>{count} lamps</source>
<translation>{count} Lampen</translation>
</message>
<message>
<source> {above}</source>
<translation> {above}</translation>
</message>
<message>
<source>Hang the {lamps} {height}{over}</source>
<translation>{lamps} {height}{over}</translation>
</message>
<message>
<source>The {lamps}{over}</source>
<translation>{lamps}{over}</translation>
</message>
<message>
<source>{said_length}, {said_length2}</source>
<translation>{said_length}, {said_length2}</translation>
</message>
<message>
<source>at (x, y) {hung_at}</source>
<translation>bei (x, y) {hung_at}</translation>
</message>
<message>
<source>at {value} % output, {hours} h a day</source>
<translation>auf {value} % gedimmt, {hours} h am Tag</translation>
</message>
<message>
<source>all walls</source>
<translation>alle Wände</translation>
</message>
<message>
<source>with {name} on {where}</source>
<translation>mit {name} ({where})</translation>
</message>
<message>
<source>and all other lamps as they are</source>
<translation>und alle anderen Lampen wie sie sind</translation>
</message>
<message>
<source>{join}.</source>
<translation>{join}.</translation>
</message>
<message>
<source>Mean {ppfd}, min / mean {percent}, {text}, {energy} a month.</source>
<translation>Mittel {ppfd}, Min/Mittel {percent}, {text}, {energy} im Monat.</translation>
</message>
<message>
<source>The {word} of what was tried</source>
<translation>Die {word} von allem, was versucht wurde</translation>
</message>
<message>
<source> so far</source>
<translation> (bisher)</translation>
</message>
<message>
<source>{lead}:</source>
<translation>{lead}:</translation>
</message>
<message>
<source>The wishes cannot be kept: {join}. The nearest:</source>
<translation>Die Wünsche sind nicht erfüllbar: {join}. Am nächsten kommt:</translation>
</message>
<message>
<source>But {beyond}: {_NO_OTHER}</source>
<translation>Aber {beyond}: {_NO_OTHER}</translation>
</message>
<message>
<source>Without a price and left out: {join}.</source>
<translation>Ohne Preis und weggelassen: {join}.</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Higher would be {_MORE}, but {why_most}.</source>
<translation>Höher wäre {_MORE}, aber: {why_most}.</translation>
</message>
<message>
<source>The ceiling is the limit: higher would be {_MORE}.</source>
<translation>Die Decke ist die Grenze: höher wäre {_MORE}.</translation>
</message>
<message>
<source>Lower would be {_MORE}, but {why_least}.</source>
<translation>Tiefer wäre {_MORE}, aber: {why_least}.</translation>
</message>
<message>
<source>The least distance, {least}, is the limit: lower is {_MORE}.</source>
<translation>Der kleinste Abstand, {least}, ist die Grenze: tiefer ist {_MORE}.</translation>
</message>
<message>
<source>Higher</source>
<translation>Höher</translation>
</message>
<message>
<source>Lower</source>
<translation>Tiefer</translation>
</message>
<message>
<source> and </source>
<translation> und </translation>
</message>
<message>
<source>{way} would be {_MORE}, but {missed} wished would be missed.</source>
<translation>{way} wäre {_MORE}, doch dieser Wunsch würde verfehlt: {missed}.</translation>
</message>
<message>
<source>{way} would be {_MORE}, but farther from the band of {out}.</source>
<translation>{way} wäre {_MORE}, aber weiter vom Zielbereich von {out} entfernt.</translation>
</message>
<message>
<source>Higher or lower would not be {_MORE}.</source>
<translation>Höher oder tiefer wäre nicht {_MORE}.</translation>
</message>
<message>
<source>nothing tried keeps the wishes and brings every canopy into its band.</source>
<translation>nichts Versuchtes hält die Wünsche ein und bringt jedes Blätterdach in seinen Zielbereich.</translation>
</message>
<message>
<source>more even</source>
<translation>gleichmäßiger</translation>
</message>
<message>
<source>less energy</source>
<translation>sparsamer</translation>
</message>
<message>
<source>cheaper</source>
<translation>billiger</translation>
</message>
<message>
<source>The canopy is dark; move the lamps.</source>
<translation>Das Blätterdach ist dunkel; die Lampen versetzen.</translation>
</message>
<message>
<source>The light would take {text} of photon flux instead of {number}</source>
<translation>Das Licht bräuchte {text} Photonenfluss statt {number}</translation>
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>, or {value} h of light a day instead of {hours}</source>
<translation>, oder {value} h Licht am Tag statt {hours}</translation>
</message>
<message>
<source>{text}; brighter linings may bring part of it.</source>
<translation>{text}; hellere Auskleidungen können einen Teil davon bringen.</translation>
</message>
</context>
<context>
<name>planner.estimate.find_places</name>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>label</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rotation_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Nelder-Mead</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>maxfev</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xatol</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fatol</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>initial_simplex</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>adaptive</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.find_question</name>
<message>
<source>Say what may be turned: height, output, hours, lamps or lining.</source>
<translation>Angeben, was verändert werden darf: Höhe, Dimmung, Stunden, Lampen oder Auskleidung.</translation>
</message>
<message>
<source>The DLI wished must rise: from the lower end to the upper.</source>
<translation>Die gewünschte DLI muss steigen: vom unteren Ende zum oberen.</translation>
</message>
<message>
<source>Say how much light is wanted: without a least DLI no light is the best.</source>
<translation>Angeben, wie viel Licht gewünscht ist: ohne kleinste DLI ist kein Licht das Beste.</translation>
</message>
<message>
<source>A DLI needs hours of light: set the photoperiod above 0 h.</source>
<translation>Eine DLI braucht Stunden mit Licht: die Beleuchtungsdauer über 0 h setzen.</translation>
</message>
<message>
<source>Write the price of 1 kWh first: without it no total is known.</source>
<translation>Zuerst den Preis von 1 kWh schreiben: ohne ihn sind keine Gesamtkosten bekannt.</translation>
</message>
<message>
<source>Say how many lamps may hang.</source>
<translation>Angeben, wie viele Lampen hängen dürfen.</translation>
</message>
<message>
<source>Places are sought for 1 to {MOST_LAMPS} lamps.</source>
<translation>Plätze werden für 1 bis {MOST_LAMPS} Lampen gesucht.</translation>
</message>
<message>
<source>Tick the linings that may be put on.</source>
<translation>Die Auskleidungen ankreuzen, die angebracht werden dürfen.</translation>
</message>
<message>
<source>Hang one lamp first.</source>
<translation>Zuerst eine Lampe aufhängen.</translation>
</message>
<message>
<source>No lamp is lit in the space; hang one first, or raise its output.</source>
<translation>Im Raum leuchtet keine Lampe; zuerst eine aufhängen oder ihre Dimmung erhöhen.</translation>
</message>
<message>
<source>No lamp that is lit hangs over {inside}, by which the plan is judged: hang one there, or judge the plan by another canopy.</source>
<translation>Keine Lampe, die leuchtet, hängt über dem Blätterdach, nach dem der Plan beurteilt wird ({inside}): dort eine aufhängen oder den Plan nach einem anderen beurteilen.</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>No one height suits all lamps: one must hang {said_length} {over} or higher ({why_least}), one {said_length2} or lower ({why_most}). Leave their heights as they are, or hang the tier above higher.</source>
<translation>Keine Höhe passt allen Lampen: Eine muss mindestens {said_length} {over} hängen ({why_least}), eine höchstens {said_length2} ({why_most}). Die Höhen lassen, wie sie sind, oder die Etage darüber höher hängen.</translation>
</message>
<message>
<source>Between canopy and ceiling there are {said_length} for the lamp to hang in; it needs {said_length2} {over}. Lower the canopy or raise the ceiling.</source>
<translation>Zwischen Blätterdach und Decke sind {said_length} für die Lampe; sie braucht {said_length2} {over}. Das Blätterdach senken oder die Decke anheben.</translation>
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.find_tries</name>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room for lamps</source>
<translation>Platz für Lampen</translation>
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>total</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.ladder</name>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.odds</name>
<message>
<source>By the values named '{name}' has more light than '{other_name}', by the odds less: these take the {words} anywhere in its range</source>
<translation>Nach den genannten Werten hat „{name}“ mehr Licht als „{other_name}“, nach den Chancen weniger: diese nehmen an, {words} liege irgendwo im Bereich</translation>
</message>
<message>
<source>{text}.</source>
<translation>{text}.</translation>
</message>
<message>
<source>{percent} to {percent2}</source>
<translation>{percent} bis {percent2}</translation>
</message>
<message>
<source>{text} ({ends}), the figures take {percent}.</source>
<translation>{text} ({ends}), die Zahlen rechnen mit {percent}.</translation>
</message>
<message>
<source>No uncertain input tells the two apart; only the computation's own error does.</source>
<translation>Keine unsichere Eingabe trennt die beiden; nur der Rechenfehler selbst tut es.</translation>
</message>
<message>
<source>What decides is the {words}: {percent} of what is not known of the difference; {measured_by} narrows it most.</source>
<translation>Entscheidend: {words}, {percent} dessen, was am Unterschied nicht bekannt ist; am meisten engt ihn ein: {measured_by}.</translation>
</message>
<message>
<source>changes of prices</source>
<translation>Änderungen der Preise</translation>
</message>
<message>
<source>more light</source>
<translation>mehr Licht</translation>
</message>
<message>
<source>less light</source>
<translation>weniger Licht</translation>
</message>
<message>
<source>the brighter one</source>
<translation>heller</translation>
</message>
<message>
<source>more light at its {LOWEST}</source>
<translation>mehr Licht ({LOWEST})</translation>
</message>
<message>
<source>less light at its {LOWEST}</source>
<translation>weniger Licht ({LOWEST})</translation>
</message>
<message>
<source>the brighter one at its {LOWEST}</source>
<translation>heller ({LOWEST})</translation>
</message>
<message>
<source>more even light</source>
<translation>gleichmäßigeres Licht</translation>
</message>
<message>
<source>less even light</source>
<translation>ungleichmäßigeres Licht</translation>
</message>
<message>
<source>the more even one</source>
<translation>gleichmäßiger</translation>
</message>
<message>
<source>{name} and {baseline} have the very same light.</source>
<translation>{name} und {baseline} haben genau dasselbe Licht.</translation>
</message>
<message>
<source>{name} and {baseline} are equal for your purpose: with 95 % probability within {_percent} % of each other.</source>
<translation>{name} und {baseline} sind für Ihren Zweck gleich: mit 95 % Wahrscheinlichkeit höchstens {_percent} % auseinander.</translation>
</message>
<message>
<source>Not clear which is {better}: {first} with {chance}; {name} lies {signed_change} to {signed_change2} % from {baseline}.</source>
<translation>Nicht klar, was {better} ist: {first} mit {chance}; {name} liegt {signed_change} bis {signed_change2} % neben {baseline}.</translation>
</message>
<message>
<source>beats</source>
<translation>schlägt</translation>
</message>
<message>
<source>is behind</source>
<translation>liegt hinter</translation>
</message>
<message>
<source>{name} {verb} {baseline} with {chance}: {_percent} % {words} ({_percent2} to {_percent3} %).</source>
<translation>{name} {verb} {baseline} mit {chance}: {_percent} % {words} ({_percent2} bis {_percent3} %).</translation>
</message>
<message>
<source>{name} and {baseline} cost the same.</source>
<translation>{name} und {baseline} kosten dasselbe.</translation>
</message>
<message>
<source>At the same light {first} is the cheaper one over {months} months with {chance}: by {money} ({money2} to {money3}) {sign}</source>
<translation>Bei gleichem Licht ist {first} über {months} Monate mit {chance} billiger: um {money} ({money2} bis {money3}) {sign}</translation>
</message>
<message>
<source>{value}{_percent}</source>
<translation>{value}{_percent}</translation>
</message>
<message>
<source>more than </source>
<translation>mehr als </translation>
</message>
<message>
<source>less than </source>
<translation>weniger als </translation>
</message>
<message>
<source>{value} %</source>
<translation>{value} %</translation>
</message>
<message>
<source>{more}99 %</source>
<translation>{more}99 %</translation>
</message>
<message>
<source>{less}1 %</source>
<translation>{less}1 %</translation>
</message>
<message>
<source>{percent} probability</source>
<translation>{percent} Wahrscheinlichkeit</translation>
</message>
<message>
<source>{value}</source>
<translation>{value}</translation>
</message>
</context>
<context>
<name>planner.estimate.outlook</name>
<message>
<source>reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photon flux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>beam</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp {value}</source>
<translation>Lampe {value}</translation>
</message>
</context>
<context>
<name>planner.estimate.result</name>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_under</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_over</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy_area</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name} {text}</source>
<translation>{name} {text}</translation>
</message>
<message>
<source>{percent} of it inside its band</source>
<translation>{percent} davon in seinem Zielbereich</translation>
</message>
<message>
<source>{name}: {join}.</source>
<translation>{name}: {join}.</translation>
</message>
<message>
<source>reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photon flux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>beam</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>reflectance of {}</source>
<translation>Reflexionsgrad von {}</translation>
</message>
<message>
<source>photon flux of {}</source>
<translation>Photonenfluss von {}</translation>
</message>
<message>
<source>beam of {}</source>
<translation>Abstrahlwinkel von {}</translation>
</message>
<message>
<source>hanging height of {}</source>
<translation>Hängehöhe von {}</translation>
</message>
<message>
<source>a survey with {}</source>
<translation>eine Messung ({})</translation>
</message>
<message>
<source>a survey of {} in open air</source>
<translation>eine Messung im Freien ({})</translation>
</message>
<message>
<source>the test of two readings under {}</source>
<translation>die Probe mit zwei Messwerten ({})</translation>
</message>
<message>
<source>measuring the hanging height of {}</source>
<translation>Nachmessen ({})</translation>
</message>
<message>
<source>dirt and age beyond what was entered</source>
<translation>Schmutz und Alter über das Eingetragene hinaus</translation>
</message>
<message>
<source>a beam of another shape than taken</source>
<translation>eine andere Form des Lichtkegels als angenommen</translation>
</message>
<message>
<source>leaves that do not fill the canopy</source>
<translation>Blätter, die das Blätterdach nicht füllen</translation>
</message>
<message>
<source>specular share and wrinkle of linings</source>
<translation>Spiegelanteil und Knitter der Auskleidungen</translation>
</message>
<message>
<source>Not counted: {listed}.</source>
<translation>Nicht berücksichtigt: {listed}.</translation>
</message>
</context>
<context>
<name>planner.estimate.schedule</name>
<message>
<source>{name}, {name2}</source>
<translation>{name}, {name2}</translation>
</message>
<message>
<source>A DLI needs hours of light: set the hours above 0 h.</source>
<translation>Eine DLI braucht Stunden mit Licht: die Stunden über 0 h setzen.</translation>
</message>
<message>
<source>{name}: {refusal}</source>
<translation>{name}: {refusal}</translation>
</message>
<message>
<source>{name}: {beyond}.</source>
<translation>{name}: {beyond}.</translation>
</message>
<message>
<source>{name}: the lamp cannot rise far enough. The ceiling leaves {said_length} above a canopy at {said_length2}, and higher would be more even.</source>
<translation>{name}: die Lampe kann nicht hoch genug steigen. Die Decke lässt {said_length} über einem Blätterdach bei {said_length2}, und höher wäre es gleichmäßiger.</translation>
</message>
<message>
<source>{name}: {join}.</source>
<translation>{name}: {join}.</translation>
</message>
<message>
<source>{name}: {outcome_of}. At {said_length} above the canopy the light is very uneven.</source>
<translation>{name}: {outcome_of}. Bei {said_length} über dem Blätterdach ist das Licht sehr ungleichmäßig.</translation>
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>thickness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{capital} cannot stand at {said_length}: what carries it begins at {said_length2}.</source>
<translation>{capital} kann nicht auf {said_length} stehen: Was es trägt, beginnt bei {said_length2}.</translation>
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>no dark hours</source>
<translation>keine dunklen Stunden</translation>
</message>
<message>
<source>only {dark} dark hours</source>
<translation>nur {dark} dunkle Stunden</translation>
</message>
<message>
<source>{name}: {photoperiod_hours} h of light leave {night} a day; most crops need a dark period, so keep at least {value} h unless this one is known to bear it.</source>
<translation>{name}: {photoperiod_hours} h Licht lassen {night} am Tag; die meisten Kulturen brauchen eine Dunkelzeit, also mindestens {value} h lassen, außer es ist bekannt, dass diese es verträgt.</translation>
</message>
</context>
<context>
<name>planner.estimate.sensitivity</name>
<message>
<source>stable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.stages</name>
<message>
<source>cannot be set up</source>
<translation>nicht einrichtbar</translation>
</message>
<message>
<source>under</source>
<translation>unter dem</translation>
</message>
<message>
<source>over</source>
<translation>über dem</translation>
</message>
<message>
<source>in</source>
<translation>im</translation>
</message>
<message>
<source>mean {place} the band, {share} of the canopy inside</source>
<translation>Mittel {place} Zielbereich, {share} des Blätterdachs darin</translation>
</message>
<message>
<source>All canopies together</source>
<translation>Alle Blätterdächer zusammen</translation>
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Week {value}</source>
<translation>Woche {value}</translation>
</message>
<message>
<source>, day {day}</source>
<translation>, Tag {day}</translation>
</message>
<message>
<source>{weeks} weeks, {energy}</source>
<translation>{weeks} Wochen, {energy}</translation>
</message>
<message>
<source>{text}, {money}</source>
<translation>{text}, {money}</translation>
</message>
<message>
<source>thickness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name} ({behind})</source>
<translation>{name} ({behind})</translation>
</message>
<message>
<source>{number} {unit_in}</source>
<translation>{number} {unit_in}</translation>
</message>
<message>
<source>{name}: </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>week</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Week</source>
<translation>Woche</translation>
</message>
<message>
<source>stage</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Stage</source>
<translation>Stadium</translation>
</message>
<message>
<source>span</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Weeks</source>
<translation>Wochen</translation>
</message>
<message>
<source>{first_week} – {last_week}</source>
<translation>{first_week} – {last_week}</translation>
</message>
<message>
<source>from</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>From week</source>
<translation>Ab Woche</translation>
</message>
<message>
<source>to</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>To week</source>
<translation>Bis Woche</translation>
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Canopy</source>
<translation>Blätterdach</translation>
</message>
<message>
<source>face</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>From floor</source>
<translation>Über Boden</translation>
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hours</source>
<translation>Stunden</translation>
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kWh</source>
<translation>kWh</translation>
</message>
<message>
<source>cost</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Cost</source>
<translation>Kosten</translation>
</message>
<message>
<source>heed</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Heed</source>
<translation>Beachten</translation>
</message>
</context>
<context>
<name>planner.estimate.sweep</name>
<message>
<source>Over</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Point</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Sweep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>SweepError</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sweep</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A sweep needs something to run over, for example height=0.2:0.6:9.</source>
<translation>Eine Reihe braucht etwas, worüber sie läuft, zum Beispiel height=0.2:0.6:9.</translation>
</message>
<message>
<source>The sweep over '{axis}' names no values.</source>
<translation>Die Reihe über „{axis}“ nennt keine Werte.</translation>
</message>
<message>
<source>'{axis}' is named twice; give all its values at once.</source>
<translation>„{axis}“ ist zweimal genannt; alle Werte auf einmal angeben.</translation>
</message>
<message>
<source>That would be {size} points; ask for at most {MAX_POINTS} at a time.</source>
<translation>Das wären {size} Punkte; höchstens {MAX_POINTS} auf einmal verlangen.</translation>
</message>
<message>
<source>{__version__} {_JOURNAL_FORMAT}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>source</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>note</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>spawn</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A process of the sweep ended before its time (out of memory, or killed). What was finished is kept; ask for the same sweep again to go on.</source>
<translation>Ein Prozess der Reihe endete vorzeitig (Speicher voll, oder beendet). Was fertig war, ist behalten; dieselbe Reihe noch einmal verlangen, um weiterzumachen.</translation>
</message>
<message>
<source>format</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>utf-8</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{_path}' holds points of another sweep or another plan, or something else; delete it, or write to another file.</source>
<translation>„{_path}“ enthält Punkte einer anderen Reihe, eines anderen Plans oder etwas anderes; löschen oder in eine andere Datei schreiben.</translation>
</message>
</context>
<context>
<name>planner.estimate.sweep_points</name>
<message>
<source>lining</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>There is no number called '{axis}'; there is {LINING}, {LAMP}, {join}.</source>
<translation>Es gibt keine Zahl namens „{axis}“; es gibt {LINING}, {LAMP}, {join}.</translation>
</message>
<message>
<source>There is no {inside} in '{name}'.</source>
<translation>{inside}: gibt es nicht in „{name}“.</translation>
</message>
<message>
<source>{words} has no {words2}.</source>
<translation>{words}: {words2} gibt es hier nicht.</translation>
</message>
<message>
<source>{words} has no {word} to go over.</source>
<translation>{words}: {word} lässt sich hier nicht durchlaufen.</translation>
</message>
<message>
<source>{lead}, {inside}</source>
<translation>{lead}, {inside}</translation>
</message>
<message>
<source>lining, all walls</source>
<translation>Auskleidung, alle Wände</translation>
</message>
<message>
<source>kind of lamp</source>
<translation>Lampenart</translation>
</message>
<message>
<source>write for example height=0.2:0.6:9, output@lamp-2=50,75,100 or lining=white-board,foil-matt</source>
<translation>zum Beispiel height=0.2:0.6:9, output@lamp-2=50,75,100 oder lining=white-board,foil-matt schreiben</translation>
</message>
<message>
<source>all</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{text}' names no values; {_EXAMPLE}.</source>
<translation>„{text}“ nennt keine Werte; {_EXAMPLE}.</translation>
</message>
<message>
<source>'{text}' is no range; {_EXAMPLE}.</source>
<translation>„{text}“ ist kein Bereich; {_EXAMPLE}.</translation>
</message>
<message>
<source>A range of '{name}' from {low} to {high} needs at least two values.</source>
<translation>Ein Bereich von „{name}“ von {low} bis {high} braucht mindestens zwei Werte.</translation>
</message>
<message>
<source>{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>There is no {word} '{key}'; there is {_ALL}, {known}.</source>
<translation>„{key}“ gibt es nicht ({word}); es gibt {_ALL}, {known}.</translation>
</message>
<message>
<source>'{word}' in '{text}' is not a number; {_EXAMPLE}.</source>
<translation>„{word}“ in „{text}“ ist keine Zahl; {_EXAMPLE}.</translation>
</message>
<message>
<source>'{word}' in '{text}' is not a finite number; {_EXAMPLE}.</source>
<translation>„{word}“ in „{text}“ ist keine endliche Zahl; {_EXAMPLE}.</translation>
</message>
<message>
<source>OMP_NUM_THREADS</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>OPENBLAS_NUM_THREADS</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>MKL_NUM_THREADS</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>VECLIB_MAXIMUM_THREADS</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>parent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>stop</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.two_readings</name>
<message>
<source>Type both readings; each must be above 0.</source>
<translation>Beide Messwerte eingeben; jeder muss über 0 sein.</translation>
</message>
<message>
<source>Aside it read {ratio} of what it read under the lamp; a beam from {ends}° to {ends2}° gives {least} to {most}. Keep the sensor level, the place dark and walls out of it, and read as far aside as the lamp hangs high.</source>
<translation>Daneben war es {ratio} dessen, was unter der Lampe war; ein Abstrahlwinkel von {ends}° bis {ends2}° gibt {least} bis {most}. Den Sensor waagrecht halten, den Ort dunkel und Wände fern, und so weit daneben messen, wie die Lampe hoch hängt.</translation>
</message>
<message>
<source>The beam is {angle_deg} ± {doubt_deg}°</source>
<translation>Der Abstrahlwinkel ist {angle_deg} ± {doubt_deg}°</translation>
</message>
<message>
<source>{text}.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{text}. Of the mean's ± the beam alone made {mean}; with this it makes about {rest}.</source>
<translation>{text}. Vom ± des Mittels machte der Winkel allein {mean} aus; damit sind es etwa {rest}.</translation>
</message>
</context>
<context>
<name>planner.estimate.upright</name>
<message>
<source>ignore</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>right</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.estimate.ways</name>
<message>
<source>way-{kind}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The level wished must be above 0 {PPFD_UNIT}.</source>
<translation>Die gewünschte Stufe muss über 0 {PPFD_UNIT} liegen.</translation>
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{text} </source>
<translation>{text} </translation>
</message>
<message>
<source>as now</source>
<translation>wie jetzt</translation>
</message>
<message>
<source>instead of {number}</source>
<translation>statt {number}</translation>
</message>
<message>
<source>{name}: mean {ppfd}, min / mean {percent}, {watts}.</source>
<translation>{name}: Mittel {ppfd}, Min/Mittel {percent}, {watts}.</translation>
</message>
<message>
<source>{words} {capital}.</source>
<translation>{words} {capital}.</translation>
</message>
<message>
<source>{words} {why}</source>
<translation>{words} {why}</translation>
</message>
<message>
<source>Full output</source>
<translation>Volle Leistung</translation>
</message>
<message>
<source>Output as it is, {output} %</source>
<translation>Wie jetzt auf {output} %</translation>
</message>
<message>
<source>Dim</source>
<translation>Dimmen</translation>
</message>
<message>
<source>Turn up</source>
<translation>Hochregeln</translation>
</message>
<message>
<source>{verb} to {better} %</source>
<translation>{verb} auf {better} %</translation>
</message>
<message>
<source>{verb} to {output} %</source>
<translation>{verb} auf {output} %</translation>
</message>
<message>
<source>The lamps cannot be dimmed.</source>
<translation>Die Lampen lassen sich nicht dimmen.</translation>
</message>
<message>
<source>it would take {text} of lamps</source>
<translation>nötig wären Lampen mit {text}</translation>
</message>
<message>
<source>dark</source>
<translation>dunkel</translation>
</message>
<message>
<source>More they do not give: {needed}, not {number}.</source>
<translation>Mehr geben sie nicht: {needed}, nicht {number}.</translation>
</message>
<message>
<source>Raise</source>
<translation>Heben</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>At one height the lamps are in the way of each other or of a shelf.</source>
<translation>Auf einer Höhe sind die Lampen einander oder einem Regalbrett im Weg.</translation>
</message>
<message>
<source>Lower</source>
<translation>Senken</translation>
</message>
<message>
<source>{verb} to {said_length}</source>
<translation>{verb} auf {said_length}</translation>
</message>
<message>
<source>No height comes nearer</source>
<translation>Keine Höhe kommt näher</translation>
</message>
<message>
<source>: {bound}.</source>
<translation>: {bound}.</translation>
</message>
<message>
<source>No lining is offered.</source>
<translation>Keine Auskleidung im Angebot.</translation>
</message>
<message>
<source>No lining offered gives more light than what is on the walls.</source>
<translation>Keine angebotene Auskleidung gibt mehr Licht als die an den Wänden.</translation>
</message>
<message>
<source>Line</source>
<translation>Auskleiden</translation>
</message>
<message>
<source>Line with {names}</source>
<translation>Auskleiden mit {names}</translation>
</message>
<message>
<source>, {inside}</source>
<translation>, {inside}</translation>
</message>
<message>
<source>No lining offered comes nearer.</source>
<translation>Keine angebotene Auskleidung kommt näher.</translation>
</message>
</context>
<context>
<name>planner.estimate.worth</name>
<message>
<source> (door)</source>
<translation> (Tür)</translation>
</message>
<message>
<source>long side</source>
<translation>lange Seite</translation>
</message>
<message>
<source>short side</source>
<translation>kurze Seite</translation>
</message>
<message>
<source>underside</source>
<translation>Unterseite</translation>
</message>
<message>
<source>top</source>
<translation>Oberseite</translation>
</message>
<message>
<source>{name}, {face}</source>
<translation>{name}, {face}</translation>
</message>
<message>
<source>All electrical power of the lamps ends as heat in the space, at once and evenly. The air that comes in has room temperature (1.2 kg/m³, 1005 J/(kg K)) and mixes fully. Heat through the walls and water that leaves the plants are not counted: both make it a little cooler. Fans give less than their label once ducts, filters and small openings are in the way.</source>
<translation>Die ganze elektrische Leistung der Lampen wird im Raum zu Wärme, sofort und gleichmäßig. Die einströmende Luft hat Zimmertemperatur (1,2 kg/m³, 1005 J/(kg K)) und mischt sich völlig. Wärme durch die Wände und Wasser, das die Pflanzen abgeben, sind nicht gerechnet: Beides macht es etwas kühler. Lüfter leisten weniger als angegeben, sobald Rohre, Filter und kleine Öffnungen im Weg sind.</translation>
</message>
<message>
<source>Air flow is no licence to crowd a lamp: keep the clearances its maker states, keep drivers and plugs out of warm corners, and measure the temperature at the canopy and at the lamp after the first hour of light.</source>
<translation>Luftstrom erlaubt nicht, einer Lampe zu nahe zu kommen: die vom Hersteller genannten Abstände einhalten, Treiber und Stecker aus warmen Ecken heraushalten und nach der ersten Stunde Licht die Temperatur am Blätterdach und an der Lampe messen.</translation>
</message>
<message>
<source>the temperature rise must be above 0 K; without one no heat is carried.</source>
<translation>der Temperaturanstieg muss über 0 K liegen; ohne ihn wird keine Wärme abgeführt.</translation>
</message>
<message>
<source>{count} x {name}</source>
<translation>{count} × {name}</translation>
</message>
<message>
<source>roll</source>
<translation>Rolle</translation>
</message>
<message>
<source>sheet</source>
<translation>Platte</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>{rolls} {kind}{plural} of {lining_name}</source>
<translation>{rolls} {kind}{plural} {lining_name}</translation>
</message>
<message>
<source>{text} of {lining_name}</source>
<translation>{text} {lining_name}</translation>
</message>
<message>
<source>nothing</source>
<translation>nichts</translation>
</message>
<message>
<source>A dark plan has no light to weigh; raise its output or hang a lamp.</source>
<translation>Ein dunkler Plan hat kein Licht zum Abwägen; heller stellen oder eine Lampe aufhängen.</translation>
</message>
<message>
<source>Dimmed to {value} % for the same light it draws</source>
<translation>Auf {value} % gedimmt braucht sie für das gleiche Licht</translation>
</message>
<message>
<source>For the same light it needs {value} % of its present output,</source>
<translation>Für das gleiche Licht braucht sie {value} % ihrer jetzigen Leistung,</translation>
</message>
<message>
<source>It draws</source>
<translation>Sie braucht</translation>
</message>
<message>
<source>less</source>
<translation>weniger</translation>
</message>
<message>
<source>more</source>
<translation>mehr</translation>
</message>
<message>
<source> ({money})</source>
<translation> ({money})</translation>
</message>
<message>
<source>{energy} a month {saves}{cash}</source>
<translation>{energy} im Monat {saves}{cash}</translation>
</message>
<message>
<source>{level} {_power}: {drawn}.</source>
<translation>{level} {_power}: {drawn}.</translation>
</message>
<message>
<source>Its lamps do not give the same light, not even at full output.</source>
<translation>Ihre Lampen geben das gleiche Licht nicht, auch nicht bei voller Leistung.</translation>
</message>
<message>
<source>As they stand it costs {money} in {span_months} months, bought and run; running {base} costs {money2}.</source>
<translation>Wie sie ist, kostet sie in {span_months} Monaten {money}, gekauft und betrieben; {base} zu betreiben kostet {money2}.</translation>
</message>
<message>
<source>as much light a day as {base}</source>
<translation>so viel Licht am Tag wie {base}</translation>
</message>
<message>
<source>{abs} % {value} light a day than {base}</source>
<translation>{abs} % {value} Licht am Tag als {base}</translation>
</message>
<message>
<source>{name} gives {light} and draws {_power} as well.</source>
<translation>{name} gibt {light} und nimmt ebenfalls {_power} auf.</translation>
</message>
<message>
<source>{name} gives {light} and draws {_power} instead of {_power2}: {abs} % {value} light for the same energy.</source>
<translation>{name} gibt {light} und nimmt {_power} statt {_power2} auf: {abs} % {value} Licht bei gleicher Energie.</translation>
</message>
<message>
<source>Nothing has to be bought for it.</source>
<translation>Dafür ist nichts zu kaufen.</translation>
</message>
<message>
<source>how {name} is priced</source>
<translation>was {name} kostet</translation>
</message>
<message>
<source>how its linings are sold</source>
<translation>wie ihre Auskleidungen verkauft werden</translation>
</message>
<message>
<source>the price of a roll or sheet</source>
<translation>was eine Rolle oder Platte kostet</translation>
</message>
<message>
<source>Say {join} to see what it costs.</source>
<translation>Angeben, {join}: dann zeigt sich, was sie kostet.</translation>
</message>
<message>
<source> and </source>
<translation> und </translation>
</message>
<message>
<source>What has to be bought costs {money}</source>
<translation>Was zu kaufen ist, kostet {money}</translation>
</message>
<message>
<source>{said}; without the same light that is never paid back.</source>
<translation>{said}; ohne das gleiche Licht macht sich das nie bezahlt.</translation>
</message>
<message>
<source>{said}; with a tariff it can be said when that is paid back.</source>
<translation>{said}; mit einem Tarif lässt sich sagen, wann sich das bezahlt macht.</translation>
</message>
<message>
<source>{said}; it saves nothing at the same light, so that is never paid back.</source>
<translation>{said}; bei gleichem Licht spart es nichts, also macht sich das nie bezahlt.</translation>
</message>
<message>
<source>{said}; at the same light it is paid back after {payback} months.</source>
<translation>{said}; bei gleichem Licht macht es sich nach {payback} Monaten bezahlt.</translation>
</message>
</context>
<context>
<name>planner.files.disk</name>
<message>
<source>it is not a regular file</source>
<translation>es ist keine gewöhnliche Datei</translation>
</message>
<message>
<source>the file is read-only</source>
<translation>die Datei ist schreibgeschützt</translation>
</message>
<message>
<source>is a folder</source>
<translation>ist ein Ordner</translation>
</message>
<message>
<source>.unfinished-{token_hex}.tmp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wb</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>No such file or directory</source>
<translation>Datei oder Ordner gibt es nicht</translation>
</message>
<message>
<source>Permission denied</source>
<translation>keine Berechtigung</translation>
</message>
<message>
<source>Operation not permitted</source>
<translation>Vorgang nicht erlaubt</translation>
</message>
<message>
<source>Is a directory</source>
<translation>ist ein Ordner</translation>
</message>
<message>
<source>Not a directory</source>
<translation>ist kein Ordner</translation>
</message>
<message>
<source>Read-only file system</source>
<translation>Datenträger ist schreibgeschützt</translation>
</message>
<message>
<source>No space left on device</source>
<translation>kein Platz mehr auf dem Datenträger</translation>
</message>
<message>
<source>File too large</source>
<translation>Datei ist zu groß</translation>
</message>
<message>
<source>Input/output error</source>
<translation>Ein-/Ausgabefehler</translation>
</message>
<message>
<source>File exists</source>
<translation>Datei gibt es schon</translation>
</message>
<message>
<source>File name too long</source>
<translation>Dateiname ist zu lang</translation>
</message>
<message>
<source>Too many levels of symbolic links</source>
<translation>zu viele Verknüpfungen hintereinander</translation>
</message>
<message>
<source>the disk is full; free some space or save elsewhere</source>
<translation>der Datenträger ist voll; Platz schaffen oder anderswo speichern</translation>
</message>
<message>
<source>its name is too long for this disk; choose a shorter one</source>
<translation>ihr Name ist zu lang für diesen Datenträger; einen kürzeren wählen</translation>
</message>
<message>
<source>it is a device or a pipe, not a regular file; choose another name</source>
<translation>es ist ein Gerät oder eine Pipe, keine gewöhnliche Datei; einen anderen Namen wählen</translation>
</message>
<message>
<source>it is a link that leads back to itself; choose another name</source>
<translation>es ist ein Verweis, der auf sich selbst zurückführt; einen anderen Namen wählen</translation>
</message>
<message>
<source>opened</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' cannot be opened: {problem}.</source>
<translation>„{name}“ lässt sich nicht öffnen: {problem}.</translation>
</message>
<message>
<source>'{name}' cannot be saved: {problem}.</source>
<translation>„{name}“ lässt sich nicht speichern: {problem}.</translation>
</message>
<message>
<source>the file was changed by another program or window since it was opened here; save under another name, or overwrite it knowingly</source>
<translation>die Datei wurde von einem anderen Programm oder Fenster geändert, seit sie hier geöffnet wurde; unter anderem Namen speichern oder bewusst überschreiben</translation>
</message>
<message>
<source>saved</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> ({holder})</source>
<translation> ({holder})</translation>
</message>
<message>
<source>it is already open in another window of this program{by}; close it there first, or work on a copy under another name</source>
<translation>sie ist schon in einem anderen Fenster dieses Programms offen{by}; dort erst schließen oder mit einer Kopie unter anderem Namen arbeiten</translation>
</message>
<message>
<source>({number}) {text}</source>
<translation>({number}) {text}</translation>
</message>
<message>
<source>; and {more} more problem{value}</source>
<translation>; außerdem {more} Problem{value}</translation>
</message>
<message>
<source>s</source>
<translation>e</translation>
</message>
<message>
<source>no reason is given</source>
<translation>ohne Angabe eines Grundes</translation>
</message>
<message>
<source>the folder '{in_print}' does not exist</source>
<translation>den Ordner „{in_print}“ gibt es nicht</translation>
</message>
<message>
<source>there is no such file in '{place}' (moved, renamed or deleted?)</source>
<translation>in „{place}“ gibt es keine solche Datei (verschoben, umbenannt oder gelöscht?)</translation>
</message>
<message>
<source>it is a folder, not a file</source>
<translation>es ist ein Ordner, keine Datei</translation>
</message>
<message>
<source>you have no permission to read it</source>
<translation>Ihnen fehlt die Berechtigung zum Lesen</translation>
</message>
<message>
<source>the file or its folder is read-only for you; save under another name or in another folder</source>
<translation>die Datei oder ihr Ordner ist für Sie schreibgeschützt; unter anderem Namen oder in einem anderen Ordner speichern</translation>
</message>
<message>
<source>the system reports '{reason_of}'</source>
<translation>das System meldet „{reason_of}“</translation>
</message>
</context>
<context>
<name>planner.files.json_text</name>
<message>
<source>Expecting value</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a value is expected there (a number, a text in double quotes, true, false, null, a list or an object)</source>
<translation>dort wird ein Wert erwartet (eine Zahl, ein Text in doppelten Anführungszeichen, true, false, null, eine Liste oder ein Objekt)</translation>
</message>
<message>
<source>Expecting property name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a name in double quotes is expected there</source>
<translation>dort wird ein Name in doppelten Anführungszeichen erwartet</translation>
</message>
<message>
<source>Expecting ',' delimiter</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a comma or a closing bracket is missing there</source>
<translation>dort fehlt ein Komma oder eine schließende Klammer</translation>
</message>
<message>
<source>Expecting ':' delimiter</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a colon is missing there after the name</source>
<translation>dort fehlt ein Doppelpunkt nach dem Namen</translation>
</message>
<message>
<source>Unterminated string</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the text that starts there has no closing quote</source>
<translation>dem dort beginnenden Text fehlt das schließende Anführungszeichen</translation>
</message>
<message>
<source>Invalid control character</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a line break or control character stands inside a text there</source>
<translation>dort steht ein Zeilenumbruch oder Steuerzeichen in einem Text</translation>
</message>
<message>
<source>Invalid \</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>an unknown backslash sequence stands inside a text there</source>
<translation>dort steht eine unbekannte Backslash-Folge in einem Text</translation>
</message>
<message>
<source>Extra data</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>there is more text after the end of the plan</source>
<translation>dort steht noch Text nach dem Ende des Plans</translation>
</message>
<message>
<source>Illegal trailing comma</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the comma there has nothing after it</source>
<translation>auf das Komma dort folgt nichts</translation>
</message>
<message>
<source>{brackets} lists and objects</source>
<translation>{brackets} Listen und Objekte</translation>
</message>
<message>
<source>{names} fields</source>
<translation>{names} Felder</translation>
</message>
<message>
<source>{values} values</source>
<translation>{values} Werte</translation>
</message>
<message>
<source>it holds {words}, far more than any plan; it is probably not a plan file</source>
<translation>sie enthält {words}, weit mehr als jeder Plan; wahrscheinlich ist es keine Plandatei</translation>
</message>
<message>
<source>it is not valid JSON at line {lineno}, column {colno}: {_syntax_in_words}</source>
<translation>es ist kein gültiges JSON in Zeile {lineno}, Spalte {colno}: {_syntax_in_words}</translation>
</message>
<message>
<source>line {line}: {error} is not a number a plan can hold; write an ordinary number</source>
<translation>Zeile {line}: {error} ist keine Zahl, die ein Plan enthalten kann; eine gewöhnliche Zahl schreiben</translation>
</message>
<message>
<source>line {line}: {str} is beyond all bounds; write an ordinary number</source>
<translation>Zeile {line}: {str} liegt jenseits aller Grenzen; eine gewöhnliche Zahl schreiben</translation>
</message>
<message>
<source>the name '{str}' is given twice in one object (line {line}); keep one</source>
<translation>der Name „{str}“ steht zweimal in einem Objekt (Zeile {line}); einen behalten</translation>
</message>
<message>
<source>its lists or objects are nested far too deep for a plan</source>
<translation>ihre Listen oder Objekte sind für einen Plan viel zu tief verschachtelt</translation>
</message>
<message>
<source>the file is empty</source>
<translation>die Datei ist leer</translation>
</message>
<message>
<source>its text is stored as UTF-16; store it as UTF-8</source>
<translation>ihr Text ist als UTF-16 gespeichert; als UTF-8 speichern</translation>
</message>
<message>
<source>it is a binary file, not a text</source>
<translation>es ist eine Binärdatei, kein Text</translation>
</message>
<message>
<source>it is a binary file, or a text that is not stored as UTF-8 (line {line})</source>
<translation>es ist eine Binärdatei oder ein Text, der nicht als UTF-8 gespeichert ist (Zeile {line})</translation>
</message>
</context>
<context>
<name>planner.files.lock</name>
<message>
<source>, since {since}</source>
<translation>, seit {since}</translation>
</message>
<message>
<source>process {process} on {value}{since}</source>
<translation>Prozess {process} auf {value}{since}</translation>
</message>
<message>
<source>this machine</source>
<translation>diesem Rechner</translation>
</message>
<message>
<source>.{name}.lock</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.{name}-{digest}.lock</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>under another name of the same file</source>
<translation>unter einem anderen Namen derselben Datei</translation>
</message>
<message>
<source>utf-8</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>process</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>machine</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>since</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>%Y-%m-%d %H:%M</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.files.migrations</name>
<message>
<source>lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacles</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>linings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ceiling</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>floor</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod_hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>closed</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>variants</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>changes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>key</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>setup</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>variant-{number}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>space</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>walls</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bands</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lining</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>band</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>top</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>line-all-walls</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>line-wall</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>line-ceiling</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>line-floor</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-model</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging-height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-place</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>size</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>space-height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy-height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy-reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>door</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>model</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>door_open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-board-24-50w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-board-30-100w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-board-45-240w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-bar-60-20w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-bar-90-30w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-bars-4-200w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-bars-6-480w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-panel-60-36w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-strip-10w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>led-spot-6w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>t5-pair-54w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>t5-four-230w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dimmable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>beam_uncertainty_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>profile</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kind</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cosine</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>exponent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>pasted-</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>format</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>it is not a plan of this program: a plan starts with its format number ("format": {to})</source>
<translation>es ist kein Plan dieses Programms: ein Plan beginnt mit seiner Formatnummer ("format": {to})</translation>
</message>
<message>
<source>it was written by a newer version of this program (format {number}; this version reads up to format {to}); update the program to open it</source>
<translation>sie wurde von einer neueren Version dieses Programms geschrieben (Format {number}; diese Version liest bis Format {to}); zum Öffnen das Programm aktualisieren</translation>
</message>
<message>
<source>format {current} is too old for this version of the program</source>
<translation>Format {current} ist zu alt für diese Version des Programms</translation>
</message>
<message>
<source>it says it is in format {current}, but its contents do not fit that format</source>
<translation>sie nennt Format {current}, aber ihr Inhalt passt nicht zu diesem Format</translation>
</message>
</context>
<context>
<name>planner.files.recovery</name>
<message>
<source>.recovery.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{getpid}-{token_hex}{_SUFFIX}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>recovery</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>written</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>path</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>stamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>saved</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>*{_SUFFIX}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>it is not a copy this program made</source>
<translation>es ist keine Kopie, die dieses Programm gemacht hat</translation>
</message>
<message>
<source>.unreadable.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A copy of unsaved work cannot be opened: {problem}. It was not thrown away; it lies in '{in_print}'.</source>
<translation>Eine Kopie ungespeicherter Arbeit lässt sich nicht öffnen: {problem}. Sie wurde nicht weggeworfen; sie liegt in „{in_print}“.</translation>
</message>
<message>
<source>*.lock</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.lock</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.files.store</name>
<message>
<source>.plan.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.ies</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.ldt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.csv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.tsv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.txt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.xlsx</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.ods</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>its name holds characters no file can have</source>
<translation>ihr Name enthält Zeichen, die keine Datei haben kann</translation>
</message>
<message>
<source>it would be larger than the {value} MB a plan file may have; keep fewer options, or give its lamps coarser light distributions</source>
<translation>sie wäre größer als die {value} MB, die eine Plandatei haben darf; weniger Varianten behalten oder ihren Lampen gröbere Lichtverteilungen geben</translation>
</message>
<message>
<source>saved</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>format</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>note</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_on_one_line}: {_indented}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{brackets}
{body}
{margin}{brackets2}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>maxItems</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>it is not a plan of this program: a plan is a JSON object, but this file holds {_kind_of}</source>
<translation>es ist kein Plan dieses Programms: ein Plan ist ein JSON-Objekt, aber diese Datei enthält {_kind_of}</translation>
</message>
<message>
<source>one of its texts holds half a letter (an escape like \ud800 without its second half); write that text anew</source>
<translation>einer ihrer Texte enthält einen halben Buchstaben (ein Escape wie \ud800 ohne seine zweite Hälfte); diesen Text neu schreiben</translation>
</message>
<message>
<source>one of its lists or objects has {len} entries, far more than any in a plan; it is probably not a plan file</source>
<translation>eine ihrer Listen oder Objekte hat {len} Einträge, weit mehr als in jedem Plan; wahrscheinlich ist es keine Plandatei</translation>
</message>
<message>
<source>nothing (null)</source>
<translation>nichts (null)</translation>
</message>
<message>
<source>a list</source>
<translation>eine Liste</translation>
</message>
<message>
<source>a text</source>
<translation>einen Text</translation>
</message>
<message>
<source>a single value</source>
<translation>einen einzelnen Wert</translation>
</message>
<message>
<source>it is not a regular file</source>
<translation>es ist keine gewöhnliche Datei</translation>
</message>
<message>
<source>it is larger than {value} MB, far more than a plan can be; it is probably not a plan file</source>
<translation>sie ist größer als {value} MB, weit mehr als ein Plan sein kann; wahrscheinlich ist es keine Plandatei</translation>
</message>
</context>
<context>
<name>planner.light.boxes</name>
<message>
<source>stable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.bright</name>
<message>
<source>imn,in-&gt;mn</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.chains</name>
<message>
<source>nij,jk-&gt;ink</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kij,kj-&gt;ki</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.close_up</name>
<message>
<source>i,kin-&gt;kn</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.division</name>
<message>
<source>stable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.emission</name>
<message>
<source>ignore</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the light distribution of a lamp is too narrow to compute with; give its angles and intensities in coarser steps.</source>
<translation>die Lichtverteilung einer Lampe ist zu schmal zum Rechnen; ihre Winkel und Lichtstärken in gröberen Schritten angeben.</translation>
</message>
<message>
<source>right</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>this profile needs directions around the axis</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.exchange</name>
<message>
<source>stable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Every surface of the space reflects all light and nothing absorbs it, so no balance exists; give the canopy, a wall or the ceiling a reflectance below 1.</source>
<translation>Jede Fläche des Raums wirft alles Licht zurück und nichts schluckt es, also gibt es keine Bilanz; dem Blätterdach, einer Wand oder der Decke einen Reflexionsgrad unter 1 geben.</translation>
</message>
</context>
<context>
<name>planner.light.field</name>
<message>
<source>Obstacles cover everything at the height of the canopy, {value} cm; lower the canopy or take an obstacle away.</source>
<translation>Hindernisse bedecken alles auf der Höhe des Blätterdachs, {value} cm; das Blätterdach senken oder ein Hindernis wegnehmen.</translation>
</message>
<message>
<source>knr,nrki-&gt;inr</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.foot</name>
<message>
<source>right</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.glints</name>
<message>
<source>wrap</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inm,inm-&gt;nm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kin,kn-&gt;in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inm,in-&gt;nm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kn,knm-&gt;nm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.images</name>
<message>
<source>ij,nkj-&gt;ikn</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.lobes</name>
<message>
<source>kin,kn-&gt;in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kin,in-&gt;kn</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.narrow</name>
<message>
<source>ie,ien-&gt;en</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>in,ien-&gt;en</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.partly</name>
<message>
<source>pij,jpk-&gt;ipk</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>pji,jpk-&gt;ipk</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.polygon</name>
<message>
<source>stable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.prism</name>
<message>
<source>ki,ki-&gt;k</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ignore</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.light.windows</name>
<message>
<source>stable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.metrics.colours</name>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ignore</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>eppfd</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>blue_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>red_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>far_red_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.metrics.cutting</name>
<message>
<source>rolls and sheets need a width and a length above 0.</source>
<translation>Rollen und Platten brauchen eine Breite und eine Länge über 0.</translation>
</message>
<message>
<source>the overlap at a seam must be less than the width of the roll.</source>
<translation>die Überlappung an einer Naht muss kleiner sein als die Breite der Rolle.</translation>
</message>
<message>
<source>node_limit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>time_limit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mip_rel_gap</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>, part {number} of {parts}</source>
<translation>, Teil {number} von {parts}</translation>
</message>
</context>
<context>
<name>planner.metrics.figures</name>
<message>
<source>lowest spot</source>
<translation>dunkelste Stelle</translation>
</message>
<message>
<source>three significant, at most units from 10 on and tenths below</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>three significant, at most tenths from 10 on and hundredths below</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>whole per cent; tenths near nothing and near all</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>three significant, never rounded to tens</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>PPFD</source>
<translation>PPFD</translation>
</message>
<message>
<source>% of {whole}</source>
<translation>% des {whole}</translation>
</message>
<message>
<source>{written} {map_unit}</source>
<translation>{written} {map_unit}</translation>
</message>
<message>
<source>{map_name} {said}</source>
<translation>{map_name} {said}</translation>
</message>
<message>
<source>{one}</source>
<translation>{one}</translation>
</message>
<message>
<source>{number} {unit}</source>
<translation>{number} {unit}</translation>
</message>
<message>
<source>{name} ({unit})</source>
<translation>{name} ({unit})</translation>
</message>
<message>
<source>the target band ({band})</source>
<translation>dem Zielbereich ({band})</translation>
</message>
<message>
<source>the target band</source>
<translation>dem Zielbereich</translation>
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Mean</source>
<translation>Mittel</translation>
</message>
<message>
<source>umol_m2_s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Photons of 400–700 nm that reach each square metre of the canopy every second, averaged over its area (PPFD).</source>
<translation>Photonen von 400–700 nm, die jede Sekunde auf jeden Quadratmeter des Blätterdachs treffen, über seine Fläche gemittelt (PPFD).</translation>
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Min / mean</source>
<translation>Min/Mittel</translation>
</message>
<message>
<source>How even the light is: the darkest cell as a share of the mean; 100 % is perfectly even.</source>
<translation>Wie gleichmäßig das Licht ist: die dunkelste Zelle als Anteil des Mittels; 100 % ist völlig gleichmäßig.</translation>
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>DLI</source>
<translation>DLI</translation>
</message>
<message>
<source>mol_m2_d</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Photons a square metre of the canopy gathers in a day of {hours} h of light (daily light integral).</source>
<translation>Photonen, die ein Quadratmeter des Blätterdachs an einem Tag mit {hours} h Licht sammelt (tägliches Lichtintegral).</translation>
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Inside band</source>
<translation>Im Zielbereich</translation>
</message>
<message>
<source>Share of the canopy's area whose light lies inside {band}.</source>
<translation>Anteil der Blätterdachfläche, deren Licht in {band} liegt.</translation>
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Minimum</source>
<translation>Minimum</translation>
</message>
<message>
<source>PPFD of the darkest cell of the map.</source>
<translation>PPFD der dunkelsten Zelle der Karte.</translation>
</message>
<message>
<source>maximum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Maximum</source>
<translation>Maximum</translation>
</message>
<message>
<source>PPFD of the brightest cell of the map.</source>
<translation>PPFD der hellsten Zelle der Karte.</translation>
</message>
<message>
<source>min_over_max</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Min / max</source>
<translation>Min/Max</translation>
</message>
<message>
<source>The darkest cell as a share of the brightest.</source>
<translation>Die dunkelste Zelle als Anteil der hellsten.</translation>
</message>
<message>
<source>cv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Variation (CV)</source>
<translation>Streuung (CV)</translation>
</message>
<message>
<source>Standard deviation of the light over the canopy as a share of the mean (coefficient of variation); 0 % is perfectly even.</source>
<translation>Standardabweichung des Lichts über das Blätterdach als Anteil des Mittels (Variationskoeffizient); 0 % ist völlig gleichmäßig.</translation>
</message>
<message>
<source>share_under</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Under band</source>
<translation>Unter Zielbereich</translation>
</message>
<message>
<source>Share of the canopy's area that gets less light than {band}.</source>
<translation>Anteil der Blätterdachfläche, deren Licht unter {band} liegt.</translation>
</message>
<message>
<source>share_over</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Over band</source>
<translation>Über Zielbereich</translation>
</message>
<message>
<source>Share of the canopy's area that gets more light than {band}.</source>
<translation>Anteil der Blätterdachfläche, deren Licht über {band} liegt.</translation>
</message>
<message>
<source>utilisation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Utilisation</source>
<translation>Nutzungsgrad</translation>
</message>
<message>
<source>Photons arriving at the canopy plane, of all canopies together, as a share of those the lamps emit; light that returns to the plane after a reflection counts again.</source>
<translation>Photonen, die auf der Ebene des Blätterdachs ankommen, auf allen Blätterdächern zusammen, als Anteil derer, die die Lampen abgeben; Licht, das nach einer Reflexion zur Ebene zurückkehrt, zählt erneut.</translation>
</message>
<message>
<source>photon_flux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Photon flux</source>
<translation>Photonenfluss</translation>
</message>
<message>
<source>umol_s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Photons of 400–700 nm all lamps emit together each second, at the output set.</source>
<translation>Photonen von 400–700 nm, die alle Lampen zusammen jede Sekunde aussenden, bei der eingestellten Dimmung.</translation>
</message>
<message>
<source>efficacy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Efficacy</source>
<translation>Effizienz</translation>
</message>
<message>
<source>umol_j</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Photons the lamps emit for each joule of electricity.</source>
<translation>Photonen, die die Lampen je Joule Strom aussenden.</translation>
</message>
<message>
<source>watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Power</source>
<translation>Leistung</translation>
</message>
<message>
<source>W</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Electrical power of all lamps at the output set.</source>
<translation>Elektrische Leistung aller Lampen bei der eingestellten Dimmung.</translation>
</message>
<message>
<source>watts_per_m2</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Power per area</source>
<translation>Leistung je Fläche</translation>
</message>
<message>
<source>W m⁻²</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>w_m2</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Electrical power for each square metre of canopy, of all canopies together.</source>
<translation>Elektrische Leistung je Quadratmeter Blätterdach, aller Blätterdächer zusammen.</translation>
</message>
<message>
<source>kwh_per_day</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Energy a day</source>
<translation>Energie am Tag</translation>
</message>
<message>
<source>kWh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Electricity the lamps use in a day of {hours} h of light.</source>
<translation>Strom, den die Lampen an einem Tag mit {hours} h Licht brauchen.</translation>
</message>
<message>
<source>canopy_area</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Canopy area</source>
<translation>Blätterdachfläche</translation>
</message>
<message>
<source>m²</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>m2</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Area of the level the light is wanted on.</source>
<translation>Fläche der Ebene, auf der das Licht gewünscht ist.</translation>
</message>
<message>
<source>eppfd</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ePPFD</source>
<translation>ePPFD</translation>
</message>
<message>
<source>Photons of 400–750 nm, averaged over the canopy: PPFD and the far-red light that leaves use together with it.</source>
<translation>Photonen von 400–750 nm, über das Blätterdach gemittelt: PPFD und das fernrote Licht, das Blätter zusammen mit ihm nutzen.</translation>
</message>
<message>
<source>blue_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Blue</source>
<translation>Blau</translation>
</message>
<message>
<source>Share of the canopy's PPFD that lies between 400 and 500 nm. What walls return best, there is more of than in the lamp's own light.</source>
<translation>Anteil am PPFD des Blätterdachs, der zwischen 400 und 500 nm liegt. Was Wände am besten zurückwerfen, davon gibt es mehr als im Licht der Lampe selbst.</translation>
</message>
<message>
<source>red_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Red</source>
<translation>Rot</translation>
</message>
<message>
<source>Share of the canopy's PPFD that lies between 600 and 700 nm; what is neither blue nor red is green.</source>
<translation>Anteil am PPFD des Blätterdachs, der zwischen 600 und 700 nm liegt; was weder blau noch rot ist, ist grün.</translation>
</message>
<message>
<source>far_red_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Far-red</source>
<translation>Fernrot</translation>
</message>
<message>
<source>Share of the canopy's ePPFD that lies between 700 and 750 nm.</source>
<translation>Anteil am ePPFD des Blätterdachs, der zwischen 700 und 750 nm liegt.</translation>
</message>
<message>
<source>Share of the canopy inside the target band; this plan has no target.</source>
<translation>Anteil des Blätterdachs im Zielbereich; dieser Plan hat kein Ziel.</translation>
</message>
<message>
<source>{value} {currency}</source>
<translation>{value} {currency}</translation>
</message>
<message>
<source>under 0.1</source>
<translation>unter 0,1</translation>
</message>
<message>
<source>{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{round}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{width}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.plan.additions</name>
<message>
<source>plain-panel</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Plain LED panel, 100 W</source>
<translation>Einfaches LED-Paneel, 100 W</translation>
</message>
<message>
<source>A round figure to start from (typical, from memory): 2.5 {EFFICACY_UNIT}.</source>
<translation>Ein runder Wert für den Anfang (üblich, aus dem Gedächtnis): 2,5 {EFFICACY_UNIT}.</translation>
</message>
<message>
<source>There is nothing to paste: select a lamp or an obstacle, here or in another plan, and copy it.</source>
<translation>Es gibt nichts einzufügen: eine Lampe oder ein Hindernis wählen, hier oder in einem anderen Plan, und kopieren.</translation>
</message>
<message>
<source>there is no room for one more, neither beside it nor above.</source>
<translation>für noch eines ist kein Platz, weder daneben noch darüber.</translation>
</message>
<message>
<source>shelf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Shelf</source>
<translation>Regalbrett</translation>
</message>
<message>
<source>tray</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Tray</source>
<translation>Schale</translation>
</message>
<message>
<source>pot</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Pot</source>
<translation>Topf</translation>
</message>
<message>
<source>box</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Box</source>
<translation>Kasten</translation>
</message>
<message>
<source>length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.plan.ageing</name>
<message>
<source>How far it has faded is not known, and none is counted: type the hours to 90 % from its data sheet (L90).</source>
<translation>Wie weit sie nachgelassen hat, ist nicht bekannt und wird nicht gezählt: die Stunden bis 90 % aus dem Datenblatt eintippen (L90).</translation>
</message>
<message>
<source>all its lamps</source>
<translation>alle Lampen</translation>
</message>
<message>
<source>How far {of} faded is not known, and none is counted: type the hours to 90 % from the data sheet (L90).</source>
<translation>Nicht bekannt und nicht gezählt ist, wie weit das Licht nachgelassen hat ({of}): die Stunden bis 90 % aus dem Datenblatt eintippen (L90).</translation>
</message>
</context>
<context>
<name>planner.plan.alignment</name>
<message>
<source>line</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.plan.changes</name>
<message>
<source>width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>depth</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>space-height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy-reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>band-edge</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dirt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>underside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>thickness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacle-rotation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp-rotation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tilt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hours-run</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dust</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{words}: this cannot be made as one change.</source>
<translation>{words}: das geht nicht als eine Änderung.</translation>
</message>
<message>
<source>, band {value}</source>
<translation>, Streifen {value}</translation>
</message>
<message>
<source>there is no {word} {value}{band} here.</source>
<translation>{word} {value}{band} gibt es hier nicht.</translation>
</message>
<message>
<source>a {word} has no lining.</source>
<translation>{word}: hat keine Auskleidung.</translation>
</message>
<message>
<source>no lamp hangs in the space; hang one first.</source>
<translation>im Raum hängt keine Lampe; zuerst eine aufhängen.</translation>
</message>
<message>
<source>hours_run</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacles</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>moved too, in proportion</source>
<translation>Im Verhältnis mitverschoben</translation>
</message>
<message>
<source>moved too, to stay inside the walls</source>
<translation>Mitverschoben, um innerhalb der Wände zu bleiben</translation>
</message>
<message>
<source>came down too, to stay under the ceiling</source>
<translation>Mit herabgesetzt, um unter der Decke zu bleiben</translation>
</message>
<message>
<source>went with it</source>
<translation>Mitbewegt</translation>
</message>
<message>
<source>{capital} {how}.</source>
<translation>{how}: {capital}.</translation>
</message>
<message>
<source>{capital} over its canopy did not move.</source>
<translation>Unbewegt über seinem Blätterdach: {capital}.</translation>
</message>
<message>
<source>lamps {listed}</source>
<translation>Lampen {listed}</translation>
</message>
<message>
<source>lamp {numbers}</source>
<translation>Lampe {numbers}</translation>
</message>
<message>
<source>another outline</source>
<translation>anderer Umriss</translation>
</message>
<message>
<source>no door</source>
<translation>keine Tür</translation>
</message>
<message>
<source>door on wall {value}</source>
<translation>Tür an Wand {value}</translation>
</message>
<message>
<source>door open</source>
<translation>Tür offen</translation>
</message>
<message>
<source>door shut</source>
<translation>Tür geschlossen</translation>
</message>
<message>
<source>room-light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room-hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>closed canopy</source>
<translation>geschlossenes Blätterdach</translation>
</message>
<message>
<source>open canopy</source>
<translation>offenes Blätterdach</translation>
</message>
<message>
<source>grey canopy</source>
<translation>graues Blätterdach</translation>
</message>
<message>
<source>canopy with colours</source>
<translation>Blätterdach mit Farben</translation>
</message>
<message>
<source>judged by {value}</source>
<translation>beurteilt nach: {value}</translation>
</message>
<message>
<source>its own canopy</source>
<translation>eigenes Blätterdach</translation>
</message>
<message>
<source>{_count}</source>
<translation>{_count}</translation>
</message>
<message>
<source>obstacle</source>
<translation>Hindernis</translation>
</message>
<message>
<source>no {noun}</source>
<translation>kein {noun}</translation>
</message>
<message>
<source>{number} {noun}{value}</source>
<translation>{number} {noun}{value}</translation>
</message>
<message>
<source>s</source>
<translation>se</translation>
</message>
<message>
<source>source</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>note</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>all walls</source>
<translation>alle Wände</translation>
</message>
<message>
<source>all lamps: {_dial_words}</source>
<translation>alle Lampen: {_dial_words}</translation>
</message>
<message>
<source>{join}: {text}</source>
<translation>{join}: {text}</translation>
</message>
<message>
<source>wall {value}: other bands</source>
<translation>Wand {value}: andere Streifen</translation>
</message>
<message>
<source>{inside}: {lining}</source>
<translation>{inside}: {lining}</translation>
</message>
<message>
<source>{inside}: {text}</source>
<translation>{inside}: {text}</translation>
</message>
<message>
<source>{short} {text}</source>
<translation>{short} {text}</translation>
</message>
<message>
<source>{name} of reflectance {reflectance}</source>
<translation>{name}, Reflexionsgrad {reflectance}</translation>
</message>
<message>
<source>without lamp {value}</source>
<translation>ohne Lampe {value}</translation>
</message>
<message>
<source>one more lamp: {value}</source>
<translation>eine Lampe mehr: {value}</translation>
</message>
<message>
<source>lamp {value}: {name}</source>
<translation>Lampe {value}: {name}</translation>
</message>
</context>
<context>
<name>planner.plan.checks</name>
<message>
<source>lamp-close-to-top</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>judged-unlit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The lamp maker's instructions and the local codes come first.</source>
<translation>Die Anleitung des Lampenherstellers und die örtlichen Vorschriften gehen vor.</translation>
</message>
<message>
<source>Leave mains wiring to a licensed electrician working to the local code.</source>
<translation>Die Netzverdrahtung einer Elektrofachkraft überlassen, die nach den örtlichen Vorschriften arbeitet.</translation>
</message>
<message>
<source>Lamp {value} ('{value2}')</source>
<translation>Lampe {value} („{value2}“)</translation>
</message>
<message>
<source>no-lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>No lamp hangs in the space yet; add one.</source>
<translation>Im Raum hängt noch keine Lampe; hänge eine auf.</translation>
</message>
<message>
<source>lamps-overlap</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lamps {value} and {value2} take up the same place; move one of them aside.</source>
<translation>Die Lampen {value} und {value2} nehmen denselben Platz ein; eine davon zur Seite rücken.</translation>
</message>
<message>
<source>lamp-through-wall</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_named} sticks out through a wall; move it, turn it, or choose a smaller one.</source>
<translation>{_named} ragt durch eine Wand; verschieben, drehen oder eine kleinere wählen.</translation>
</message>
<message>
<source>lamp-close-to-canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_named} hangs {said_length} {above_own}: leaves may scorch, and the light is very uneven. Keep at least {said_length2}. {DEFERS}</source>
<translation>{_named} hängt {said_length} {above_own}: Blätter können verbrennen, und das Licht ist sehr ungleichmäßig. Mindestens {said_length2} einhalten. {DEFERS}</translation>
</message>
<message>
<source>lamp-inside-obstacle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_named} hangs inside obstacle {number} ('{name}'): its light cannot come out. Move one of them.</source>
<translation>{_named} hängt in Hindernis {number} („{name}“): Ihr Licht kann nicht heraus. Eines von beiden verschieben.</translation>
</message>
<message>
<source>{_named} hangs {said_length} above the canopy on obstacle {number} ('{name}'): leaves may scorch, and the light is very uneven. Keep at least {said_length2}. {DEFERS}</source>
<translation>{_named} hängt {said_length} über dem Blätterdach auf Hindernis {number} ('{name}'): Blätter können verbrennen, und das Licht ist sehr ungleichmäßig. Mindestens {said_length2} einhalten. {DEFERS}</translation>
</message>
<message>
<source>efficacy-too-good</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_named} would give {efficacy} µmol per joule; the best LED fixtures cannot pass {HIGHEST_EFFICACY}. Check its photon flux and watts.</source>
<translation>{_named} gäbe {efficacy} µmol je Joule; die besten LED-Leuchten kommen nicht über {HIGHEST_EFFICACY}. Photonenfluss und Watt prüfen.</translation>
</message>
<message>
<source>lamp-off</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{_named} is dimmed to 0 % and gives no light.</source>
<translation>{_named} ist auf 0 % gedimmt und gibt kein Licht.</translation>
</message>
<message>
<source>Obstacle {value} ('{name}')</source>
<translation>Hindernis {value} („{name}“)</translation>
</message>
<message>
<source>obstacle-through-wall</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{named} sticks out through a wall; move it, turn it, or make it smaller.</source>
<translation>{named} ragt durch eine Wand; verschieben, drehen oder verkleinern.</translation>
</message>
<message>
<source>obstacle-below-canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{named} lies below the closed canopy, where no light comes.</source>
<translation>{named} liegt unter dem geschlossenen Blätterdach, wo kein Licht hinkommt.</translation>
</message>
<message>
<source>obstacles-overlap</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{named} and obstacle {number} ('{name}') take up the same place: move one of them.</source>
<translation>{named} und Hindernis {number} ('{name}') nehmen denselben Platz ein: eines von beiden verschieben.</translation>
</message>
<message>
<source>it lies below the closed canopy</source>
<translation>es liegt unter dem geschlossenen Blätterdach</translation>
</message>
<message>
<source>it touches the ceiling</source>
<translation>es berührt die Decke</translation>
</message>
<message>
<source>{inside} stands on all of it</source>
<translation>es ist ganz bedeckt ({inside})</translation>
</message>
<message>
<source>The plan is judged by {named}, but no light can fall there: {why}. Figures that name no canopy are those of the plan's own.</source>
<translation>Der Plan wird nach einem Blätterdach beurteilt, auf das kein Licht fallen kann ({named}): {why}. Kennzahlen, die kein Blätterdach nennen, gelten dem eigenen des Plans.</translation>
</message>
<message>
<source>'{name}' on {inside} is {said_length} from lamp {value}</source>
<translation>„{name}“ ({inside}) ist {said_length} von Lampe {value} entfernt</translation>
</message>
<message>
<source>burn</source>
<translation>brennen</translation>
</message>
<message>
<source>melt</source>
<translation>schmelzen</translation>
</message>
<message>
<source>burns-near-lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{place} and can {verb}: leave more room or take another lining there. {DEFERS}</source>
<translation>{place} und kann {verb}: mehr Abstand lassen oder dort eine andere Auskleidung nehmen. {DEFERS}</translation>
</message>
<message>
<source>conducts-near-lamp</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{place} and conducts electricity: it can bridge live parts or a damaged cable. Keep it off terminals, plugs and drivers. {ELECTRICIAN}</source>
<translation>{place} und leitet Strom: Sie kann spannungsführende Teile oder ein beschädigtes Kabel überbrücken. Von Klemmen, Steckern und Treibern fernhalten. {ELECTRICIAN}</translation>
</message>
<message>
<source>conducts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' conducts electricity: let none of it touch terminals, plugs, drivers or cable entries. {ELECTRICIAN}</source>
<translation>„{name}“ leitet Strom: Nichts davon darf Klemmen, Stecker, Treiber oder Kabeleinführungen berühren. {ELECTRICIAN}</translation>
</message>
<message>
<source>hot-spots</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' may focus light where it is curved or creased: look at plants, cables and linings after the first hour.</source>
<translation>„{name}“ kann gewölbt oder geknittert Licht bündeln: nach der ersten Stunde Pflanzen, Kabel und Auskleidungen ansehen.</translation>
</message>
<message>
<source>holds-moisture</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' soaks up water and may grow mould: keep the air moving and dry what gets wet within a day or two.</source>
<translation>„{name}“ saugt Wasser auf und kann schimmeln: die Luft in Bewegung halten und Nasses innerhalb von ein bis zwei Tagen trocknen.</translation>
</message>
<message>
<source>dense-power</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The lamps take {density} W per m² of floor, more than {DENSE_WATTS_PER_M2} W/m². Nearly all of it ends as heat in the space: check watts and size, and plan for moving air. {DEFERS}</source>
<translation>Die Lampen nehmen {density} W je m² Boden auf, mehr als {DENSE_WATTS_PER_M2} W/m². Fast alles davon wird im Raum zu Wärme: Watt und Größe prüfen und bewegte Luft einplanen. {DEFERS}</translation>
</message>
<message>
<source>no dark hours</source>
<translation>keine dunklen Stunden</translation>
</message>
<message>
<source>only {dark} dark hours</source>
<translation>nur {dark} dunkle Stunden</translation>
</message>
<message>
<source>short-night</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A photoperiod of {hours} h leaves {night} a day. Tomato leaves are harmed by light around the clock, and many fruiting crops want a night: keep 4-6 h dark unless the crop is known to bear it.</source>
<translation>Eine Beleuchtungsdauer von {hours} h lässt {night} am Tag. Tomatenblättern schadet Licht rund um die Uhr, und viele fruchttragende Kulturen wollen eine Nacht: 4-6 h dunkel lassen, außer es ist bekannt, dass die Kultur es verträgt.</translation>
</message>
<message>
<source>no-hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The photoperiod is 0 h: the lamps never light, and the DLI is 0. Set the hours of light a day.</source>
<translation>Die Beleuchtungsdauer ist 0 h: Die Lampen leuchten nie, und die DLI ist 0. Die Stunden mit Licht am Tag setzen.</translation>
</message>
<message>
<source>no-target</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>No target is set: choose a crop or a band of PPFD or DLI to see where the light falls short. Such bands are guidance, not a pass or a fail.</source>
<translation>Kein Ziel ist gesetzt: eine Kultur oder einen Bereich von PPFD oder DLI wählen, um zu sehen, wo Licht fehlt. Solche Bereiche sind Anhaltspunkte, kein Bestanden oder Durchgefallen.</translation>
</message>
<message>
<source>more hours a day need less at a time</source>
<translation>mehr Stunden am Tag brauchen weniger auf einmal</translation>
</message>
<message>
<source>check the band</source>
<translation>den Bereich prüfen</translation>
</message>
<message>
<source>strong-target</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The target asks for at least {band} {PPFD_UNIT}, near the full sun's 2000: {remedy}.</source>
<translation>Das Ziel verlangt mindestens {band} {PPFD_UNIT}, nahe den 2000 voller Sonne: {remedy}.</translation>
</message>
</context>
<context>
<name>planner.plan.costs</name>
<message>
<source>unit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>currency</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>months</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Width of the roll, or the sheet's shorter side.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Length on one roll, or the sheet's longer side.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Of one roll or sheet.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The tariff.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Added to every side of a cut piece, for corners and seams.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Whether pieces that fit whole may be put together from strips.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>How long the light is run in a reckoned total.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the goods of lining '{key}' are given twice; keep one.</source>
<translation>die Ware der Auskleidung „{key}“ ist zweimal angegeben; eine behalten.</translation>
</message>
<message>
<source>the price of lamp '{key}' is given twice; keep one.</source>
<translation>der Preis der Lampe „{key}“ ist zweimal angegeben; einen behalten.</translation>
</message>
</context>
<context>
<name>planner.plan.dials</name>
<message>
<source> of the lamp</source>
<translation> der Lampe</translation>
</message>
<message>
<source> of the obstacle</source>
<translation> des Hindernisses</translation>
</message>
<message>
<source> of the corner</source>
<translation> der Ecke</translation>
</message>
<message>
<source>times</source>
<translation>mal</translation>
</message>
<message>
<source>m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{words}, {words2}</source>
<translation>{words}, {words2}</translation>
</message>
<message>
<source>{words} has no {words2}.</source>
<translation>{words}: {words2} gibt es hier nicht.</translation>
</message>
<message>
<source>No lamp hangs in the space, so there is no {words} to set.</source>
<translation>Im Raum hängt keine Lampe, also ist hier nichts zu setzen: {words}.</translation>
</message>
<message>
<source>There is nothing in the plan that has a {words}.</source>
<translation>Im Plan gibt es das nicht: {words}.</translation>
</message>
<message>
<source>There is no number called '{key}'; there is {join}.</source>
<translation>Es gibt keine Zahl namens „{key}“; es gibt {join}.</translation>
</message>
<message>
<source>{value} of the corner</source>
<translation>{value} der Ecke</translation>
</message>
<message>
<source>xy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>corner-{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Move corner</source>
<translation>Ecke verschieben</translation>
</message>
<message>
<source>{value} end of the target</source>
<translation>{value} Ende des Ziels</translation>
</message>
<message>
<source>lower</source>
<translation>unteres</translation>
</message>
<message>
<source>upper</source>
<translation>oberes</translation>
</message>
<message>
<source>Set target band</source>
<translation>Zielbereich setzen</translation>
</message>
<message>
<source>{kind}-{part}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging height</source>
<translation>Hängehöhe</translation>
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set lamp height</source>
<translation>Lampenhöhe setzen</translation>
</message>
<message>
<source>From the lamp's lit face down to the canopy it hangs over, of a rack that of its tier: the plane the plants' tops stand at. Higher gives less light, more evenly.</source>
<translation>Von der Lichtfläche der Lampe bis zum Blätterdach, über dem sie hängt, in einem Gestell dem ihrer Etage: der Ebene der Pflanzenspitzen. Höher gibt weniger Licht, aber gleichmäßiger.</translation>
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set lamp output</source>
<translation>Dimmung der Lampe setzen</translation>
</message>
<message>
<source>The dimmer: light and watts both follow it in proportion. Real lamps often do a little better when dimmed.</source>
<translation>Der Dimmer: Licht und Watt folgen ihm im gleichen Verhältnis. Wirkliche Lampen sind gedimmt oft etwas besser.</translation>
</message>
<message>
<source>reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wall reflectance</source>
<translation>Reflexionsgrad der Wände</translation>
</message>
<message>
<source>Set reflectance of walls</source>
<translation>Reflexionsgrad der Wände setzen</translation>
</message>
<message>
<source>width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>footprint width</source>
<translation>Breite des Grundrisses</translation>
</message>
<message>
<source>Set width</source>
<translation>Breite setzen</translation>
</message>
<message>
<source>Inside measure from left to right, between the linings. Lamps keep their place in proportion.</source>
<translation>Innenmaß von links nach rechts, zwischen den Auskleidungen. Lampen behalten ihren Platz im Verhältnis.</translation>
</message>
<message>
<source>depth</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>footprint depth</source>
<translation>Tiefe des Grundrisses</translation>
</message>
<message>
<source>Set depth</source>
<translation>Tiefe setzen</translation>
</message>
<message>
<source>Inside measure from front to back, between the linings.</source>
<translation>Innenmaß von vorn nach hinten, zwischen den Auskleidungen.</translation>
</message>
<message>
<source>size</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>footprint size, times as drawn</source>
<translation>Größe des Grundrisses, Vielfaches der Zeichnung</translation>
</message>
<message>
<source>Set size</source>
<translation>Größe setzen</translation>
</message>
<message>
<source>spacing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp spacing</source>
<translation>Lampenabstand</translation>
</message>
<message>
<source>Spread lamps</source>
<translation>Lampen verteilen</translation>
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy height</source>
<translation>Höhe des Blätterdachs</translation>
</message>
<message>
<source>Set canopy height</source>
<translation>Höhe des Blätterdachs setzen</translation>
</message>
<message>
<source>How high above the floor the tops of the plants, or the meter, stand. Lamps stay where they hang, so their hanging height changes with it.</source>
<translation>Wie hoch über dem Boden die Pflanzenspitzen oder das Messgerät stehen. Lampen bleiben, wo sie hängen; ihre Hängehöhe ändert sich also mit.</translation>
</message>
<message>
<source>space-height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inside height</source>
<translation>Innenhöhe</translation>
</message>
<message>
<source>Set height of the space</source>
<translation>Höhe des Raums setzen</translation>
</message>
<message>
<source>Inside measure from floor to ceiling. Lamps that no longer fit come down with it.</source>
<translation>Innenmaß vom Boden bis zur Decke. Lampen, die nicht mehr passen, kommen mit herunter.</translation>
</message>
<message>
<source>canopy-reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy reflectance</source>
<translation>Reflexionsgrad des Blätterdachs</translation>
</message>
<message>
<source>Set canopy reflectance</source>
<translation>Reflexionsgrad des Blätterdachs setzen</translation>
</message>
<message>
<source>The part of the light that the leaves send back. Green leaves return about 5 to 10 % between 400 and 700 nm.</source>
<translation>Der Teil des Lichts, den die Blätter zurückwerfen. Grüne Blätter geben zwischen 400 und 700 nm etwa 5 bis 10 % zurück.</translation>
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set photoperiod</source>
<translation>Beleuchtungsdauer setzen</translation>
</message>
<message>
<source>Hours of light in a day. With the PPFD it makes the day's total, the daily light integral (DLI).</source>
<translation>Stunden mit Licht am Tag. Mit der PPFD ergeben sie die Tagessumme, das tägliche Lichtintegral (DLI).</translation>
</message>
<message>
<source>room-light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room light</source>
<translation>Licht des Zimmers</translation>
</message>
<message>
<source>Set light of the room</source>
<translation>Licht des Zimmers setzen</translation>
</message>
<message>
<source>What a meter reads that stands upright in the open door and looks into the room. In lx it is taken as daylight (CIE illuminant D65): {DAYLIGHT_LUX} lx are 1 {PPFD_UNIT}. Where the colours of all lamps are counted, it has those of daylight.</source>
<translation>Was ein Messgerät zeigt, das aufrecht in der offenen Tür steht und in den Raum blickt. In lx gilt es als Tageslicht (CIE-Normlichtart D65): {DAYLIGHT_LUX} lx sind 1 {PPFD_UNIT}. Wo die Farben aller Lampen gezählt werden, hat es die von Tageslicht.</translation>
</message>
<message>
<source>room-hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hours of room light</source>
<translation>Stunden Zimmerlicht</translation>
</message>
<message>
<source>Set hours of room light</source>
<translation>Stunden Zimmerlicht setzen</translation>
</message>
<message>
<source>How long in a day the room is so light; it counts in the DLI. Plants that flower in short days count it as day.</source>
<translation>Wie lange am Tag das Zimmer so hell ist; es zählt im DLI. Pflanzen, die bei kurzen Tagen blühen, halten es für Tag.</translation>
</message>
<message>
<source>lamp-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x of the lamp</source>
<translation>x der Lampe</translation>
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Move lamp</source>
<translation>Lampe verschieben</translation>
</message>
<message>
<source>Right of the zero corner.</source>
<translation>Rechts von der Nullecke.</translation>
</message>
<message>
<source>lamp-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y of the lamp</source>
<translation>y der Lampe</translation>
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Back of the zero corner.</source>
<translation>Hinter der Nullecke.</translation>
</message>
<message>
<source>lamp-rotation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rotation of the lamp</source>
<translation>Drehung der Lampe</translation>
</message>
<message>
<source>rotation_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Rotate lamp</source>
<translation>Lampe drehen</translation>
</message>
<message>
<source>Counter-clockwise, seen from above.</source>
<translation>Gegen den Uhrzeigersinn, von oben gesehen.</translation>
</message>
<message>
<source>tilt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tilt of the lamp</source>
<translation>Neigung der Lampe</translation>
</message>
<message>
<source>tilt_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Tilt lamp</source>
<translation>Lampe neigen</translation>
</message>
<message>
<source>About the lamp's own length, as on a hinge. Above 0 its back side (while its rotation is 0) rises and its light turns that way, below 0 to the front.</source>
<translation>Um die eigene Länge der Lampe, wie an einem Scharnier. Über 0 hebt sich ihre hintere Seite (solange ihre Drehung 0 ist) und ihr Licht wendet sich dorthin, unter 0 nach vorn.</translation>
</message>
<message>
<source>dust</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dust of the lamp</source>
<translation>Staub der Lampe</translation>
</message>
<message>
<source>Set dust</source>
<translation>Staub setzen</translation>
</message>
<message>
<source>Share of its light that dust on it takes away; wipe it, with the mains off, and measure before and after.</source>
<translation>Anteil ihres Lichts, den Staub auf ihr wegnimmt; bei gezogenem Stecker abwischen und vorher und nachher messen.</translation>
</message>
<message>
<source>hours-run</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hours run</source>
<translation>Betriebsstunden</translation>
</message>
<message>
<source>hours_run</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set hours run</source>
<translation>Betriebsstunden setzen</translation>
</message>
<message>
<source>Hours of light it has given so far; with its L90 they say how far it has faded.</source>
<translation>Stunden, die sie bisher geleuchtet hat; mit ihrem L90 sagen sie, wie weit sie nachgelassen hat.</translation>
</message>
<message>
<source>hours-to-90</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hours to 90 %</source>
<translation>Stunden bis 90 %</translation>
</message>
<message>
<source>hours_to_90</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set L90</source>
<translation>L90 setzen</translation>
</message>
<message>
<source>Hours after which 90 % of its light is left, printed as L90; 0 where nobody states it. Data sheets give L70 more often: L90 is about 0.3 times that.</source>
<translation>Stunden, nach denen noch 90 % ihres Lichts übrig sind, gedruckt als L90; 0, wo es niemand angibt. Datenblätter nennen öfter L70: L90 ist etwa das 0,3-Fache davon.</translation>
</message>
<message>
<source>ppf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>PPF</source>
<translation>PPF</translation>
</message>
<message>
<source>Set lamp PPF</source>
<translation>PPF der Lampe setzen</translation>
</message>
<message>
<source>Photosynthetic photon flux: all the light between 400 and 700 nm the lamp sends out per second, at full output. Makers print it as PPF.</source>
<translation>Photosynthetischer Photonenfluss: alles Licht zwischen 400 und 700 nm, das die Lampe bei voller Leistung je Sekunde aussendet. Hersteller nennen es PPF.</translation>
</message>
<message>
<source>watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set lamp watts</source>
<translation>Watt der Lampe setzen</translation>
</message>
<message>
<source>Electrical power drawn at full output.</source>
<translation>Elektrische Leistung bei voller Leistung der Lampe.</translation>
</message>
<message>
<source>beam</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>beam angle</source>
<translation>Abstrahlwinkel</translation>
</message>
<message>
<source>Set beam angle</source>
<translation>Abstrahlwinkel setzen</translation>
</message>
<message>
<source>The full angle between the directions in which the lamp sends half as much as straight down. A bare LED board has about 120°, a spot 40° or less.</source>
<translation>Der volle Winkel zwischen den Richtungen, in die die Lampe halb so viel sendet wie gerade nach unten. Ein LED-Paneel ohne Linsen hat etwa 120°, ein Spot 40° oder weniger.</translation>
</message>
<message>
<source>lamp-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>length of the lamp</source>
<translation>Länge der Lampe</translation>
</message>
<message>
<source>length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set lamp size</source>
<translation>Größe der Lampe setzen</translation>
</message>
<message>
<source>Along the lamp's own long side.</source>
<translation>Längs ihrer langen Seite.</translation>
</message>
<message>
<source>lamp-width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>width of the lamp</source>
<translation>Breite der Lampe</translation>
</message>
<message>
<source>Over the lit faces, edge to edge.</source>
<translation>Über die leuchtenden Flächen, von Kante zu Kante.</translation>
</message>
<message>
<source>bars</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>number of bars</source>
<translation>Zahl der Leisten</translation>
</message>
<message>
<source>count</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set lamp bars</source>
<translation>Leisten der Lampe setzen</translation>
</message>
<message>
<source>How many bars there are.</source>
<translation>Wie viele Leisten es sind.</translation>
</message>
<message>
<source>bar-width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bar width</source>
<translation>Leistenbreite</translation>
</message>
<message>
<source>bar_width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Width of the lit strip of one bar.</source>
<translation>Breite des leuchtenden Streifens einer Leiste.</translation>
</message>
<message>
<source>housing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>housing height</source>
<translation>Gehäusehöhe</translation>
</message>
<message>
<source>housing_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set lamp housing</source>
<translation>Gehäuse der Lampe setzen</translation>
</message>
<message>
<source>Height of the opaque body above the lit face. It casts shadows for light that comes back from above; 0 lets light pass through the lamp.</source>
<translation>Höhe des undurchsichtigen Gehäuses über der Lichtfläche. Es wirft Schatten für Licht, das von oben zurückkommt; 0 lässt Licht durch die Lampe.</translation>
</message>
<message>
<source>wall-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wall length</source>
<translation>Wandlänge</translation>
</message>
<message>
<source>Set wall length</source>
<translation>Wandlänge setzen</translation>
</message>
<message>
<source>The far end of the wall moves along it, and the walls beyond it move with that end.</source>
<translation>Das ferne Ende der Wand wandert an ihr entlang, und die Wände dahinter wandern mit.</translation>
</message>
<message>
<source>band-edge</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>upper edge</source>
<translation>Oberkante</translation>
</message>
<message>
<source>Move band edge</source>
<translation>Streifenkante verschieben</translation>
</message>
<message>
<source>dirt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set dirt</source>
<translation>Schmutz setzen</translation>
</message>
<message>
<source>Share of what the clean lining returns that dirt, dust or algae take away: by a meter against the wall, 1 minus the reading where it is dirty over that where it is clean. Split the band where only its lower part is dirty.</source>
<translation>Anteil dessen, was die saubere Auskleidung zurückwirft, den Schmutz, Staub oder Algen wegnehmen: mit dem Messgerät gegen die Wand, 1 minus der Messwert, wo sie schmutzig ist, geteilt durch den, wo sie sauber ist. Den Streifen teilen, wo nur sein unterer Teil schmutzig ist.</translation>
</message>
<message>
<source>obstacle-x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x of the obstacle</source>
<translation>x des Hindernisses</translation>
</message>
<message>
<source>Move obstacle</source>
<translation>Hindernis verschieben</translation>
</message>
<message>
<source>Its middle.</source>
<translation>Seine Mitte.</translation>
</message>
<message>
<source>obstacle-y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y of the obstacle</source>
<translation>y des Hindernisses</translation>
</message>
<message>
<source>underside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Raise obstacle</source>
<translation>Hindernis heben</translation>
</message>
<message>
<source>Height of its lower side above the floor. Lamps that hang from it and what stands on it go with it. What lies wholly below a closed canopy gets no light and casts no shadow.</source>
<translation>Höhe seiner Unterseite über dem Boden. Lampen, die daran hängen, und was darauf steht, gehen mit. Was ganz unter einem geschlossenen Blätterdach liegt, bekommt kein Licht und wirft keinen Schatten.</translation>
</message>
<message>
<source>obstacle-rotation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rotation of the obstacle</source>
<translation>Drehung des Hindernisses</translation>
</message>
<message>
<source>Rotate obstacle</source>
<translation>Hindernis drehen</translation>
</message>
<message>
<source>obstacle-length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>length of the obstacle</source>
<translation>Länge des Hindernisses</translation>
</message>
<message>
<source>Set size of obstacle</source>
<translation>Größe des Hindernisses setzen</translation>
</message>
<message>
<source>Along its own long side.</source>
<translation>Längs seiner langen Seite.</translation>
</message>
<message>
<source>obstacle-width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>width of the obstacle</source>
<translation>Breite des Hindernisses</translation>
</message>
<message>
<source>Across its own long side.</source>
<translation>Quer zu seiner langen Seite.</translation>
</message>
<message>
<source>thickness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>From its underside up.</source>
<translation>Von der Unterseite nach oben.</translation>
</message>
<message>
<source>leaves</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>reflectance of a carried canopy</source>
<translation>Reflexionsgrad eines getragenen Blätterdachs</translation>
</message>
<message>
<source>The part of the light that the leaves on its top send back.</source>
<translation>Der Teil des Lichts, den die Blätter auf seiner Oberseite zurückwerfen.</translation>
</message>
<message>
<source>own-low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lower end of an own target</source>
<translation>unteres Ende eines eigenen Ziels</translation>
</message>
<message>
<source>low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>own-high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>upper end of an own target</source>
<translation>oberes Ende eines eigenen Ziels</translation>
</message>
<message>
<source>high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ppfd</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tariff</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>price of 1 kWh</source>
<translation>Preis von 1 kWh</translation>
</message>
<message>
<source>price_per_kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set tariff</source>
<translation>Tarif setzen</translation>
</message>
<message>
<source>Leave it at 0 while it is not known.</source>
<translation>Auf 0 lassen, solange unbekannt.</translation>
</message>
<message>
<source>overlap</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set overlap</source>
<translation>Überlappung setzen</translation>
</message>
<message>
<source>Added to every side of a cut piece, for corners and seams.</source>
<translation>Kommt an jede Seite eines Zuschnitts, für Ecken und Nähte.</translation>
</message>
<message>
<source>span</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>span of a total</source>
<translation>Zeitraum der Gesamtkosten</translation>
</message>
<message>
<source>span_months</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Set span</source>
<translation>Zeitraum setzen</translation>
</message>
<message>
<source>What is bought and the energy of so many months make the total of an option.</source>
<translation>Was gekauft wird und die Energie so vieler Monate ergeben die Gesamtkosten einer Variante.</translation>
</message>
</context>
<context>
<name>planner.plan.edits</name>
<message>
<source>{said_length} cannot be cut off here: the shorter of the two walls is {said_length2} long.</source>
<translation>{said_length} lassen sich hier nicht abschneiden: Die kürzere der beiden Wände ist {said_length2} lang.</translation>
</message>
<message>
<source>a footprint needs at least three corners.</source>
<translation>ein Grundriss braucht mindestens drei Ecken.</translation>
</message>
<message>
<source>the uppermost band has no edge above it to take away.</source>
<translation>der oberste Streifen hat keine Kante über sich, die wegzunehmen wäre.</translation>
</message>
<message>
<source>walls</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacles</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ceiling</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>floor</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the ceiling is at {said_length}</source>
<translation>die Decke ist auf {said_length}</translation>
</message>
<message>
<source>lamp {number} hangs at {said_length}</source>
<translation>Lampe {number} hängt auf {said_length}</translation>
</message>
<message>
<source>the canopy is at {said_length}</source>
<translation>das Blätterdach ist auf {said_length}</translation>
</message>
<message>
<source>Canopy height</source>
<translation>Höhe des Blätterdachs</translation>
</message>
<message>
<source>Inside height</source>
<translation>Innenhöhe</translation>
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>thickness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>underside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.plan.groups</name>
<message>
<source>{verb} {word}</source>
<translation>{verb}: {word}</translation>
</message>
<message>
<source>{verb} {len} lamps</source>
<translation>{verb}: {len} Lampen</translation>
</message>
<message>
<source>{verb} {len} obstacles</source>
<translation>{verb}: {len} Hindernisse</translation>
</message>
<message>
<source>{verb} {len} things</source>
<translation>{verb}: {len} Stücke</translation>
</message>
<message>
<source>{len} lamps: {words}</source>
<translation>{len} Lampen: {words}</translation>
</message>
<message>
<source>{len} obstacles: {words}</source>
<translation>{len} Hindernisse: {words}</translation>
</message>
<message>
<source>lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>obstacles</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>there is no room inside the walls for all of them like this.</source>
<translation>innerhalb der Wände ist so kein Platz für alle.</translation>
</message>
<message>
<source>rotation_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>underside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{label}: {limit_text}.</source>
<translation>{label}: {limit_text}.</translation>
</message>
<message>
<source>equal gaps want at least three; select more.</source>
<translation>gleiche Abstände brauchen mindestens drei; mehr wählen.</translation>
</message>
</context>
<context>
<name>planner.plan.lamp</name>
<message>
<source>{ppf} {FLUX_UNIT} from {watts} W would be {value} {EFFICACY_UNIT}, and even a perfect lamp cannot exceed {MOST_PER_JOULE}</source>
<translation>{ppf} {FLUX_UNIT} aus {watts} W wären {value} {EFFICACY_UNIT}, und selbst eine perfekte Lampe kommt nicht über {MOST_PER_JOULE}</translation>
</message>
<message>
<source>unit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>point</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>panel</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Along the lamp's own x axis.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Along the lamp's own y axis.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bars</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Length of each bar, along the lamp's own x axis.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Width of the emitting strip of one bar.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Outer width over all bars, along y.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{count} bars of {said_length} do not fit into a width of {said_length2}.</source>
<translation>{count} Leisten von {said_length} passen nicht in eine Breite von {said_length2}.</translation>
</message>
<message>
<source>kind</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cosine</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>table</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the profile has {len} angles but {len2} intensities.</source>
<translation>das Profil hat {len} Winkel, aber {len2} Lichtstärken.</translation>
</message>
<message>
<source>the angles of the profile must rise from each to the next.</source>
<translation>die Winkel des Profils müssen stetig steigen.</translation>
</message>
<message>
<source>the profile emits nothing: at least one intensity must be above 0.</source>
<translation>das Profil strahlt nichts ab: Mindestens eine Lichtstärke muss über 0 liegen.</translation>
</message>
<message>
<source>planes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>polar</source>
<translation>Polarwinkel</translation>
</message>
<message>
<source>azimuth</source>
<translation>Azimutwinkel</translation>
</message>
<message>
<source>the {name} angles of the profile must rise from each to the next.</source>
<translation>die {name} des Profils müssen stetig steigen.</translation>
</message>
<message>
<source>the first azimuth of the profile must be 0.</source>
<translation>der erste Azimutwinkel des Profils muss 0 sein.</translation>
</message>
<message>
<source>the profile has {len} azimuths but {len2} planes.</source>
<translation>das Profil hat {len} Azimutwinkel, aber {len2} Ebenen.</translation>
</message>
<message>
<source>each plane of the profile must hold {len} intensities, one for each polar angle.</source>
<translation>jede Ebene des Profils muss {len} Lichtstärken enthalten, eine je Polarwinkel.</translation>
</message>
<message>
<source>Photon flux 400-700 nm at full output.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Electrical power at full output.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Height of the opaque housing above the face; 0 lets light pass the lamp.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Diffuse reflectance of the housing, 400-700 nm.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Relative uncertainty of the photon flux.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hours of light after which 90 % of its flux is left (L90); 0: not stated, and no ageing is counted.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>How far the beam angle of a cosine profile may be off, either way; 0 where it is known. Tables and photometric files have none.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>How its photons are spread over the wavebands; null: not known.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Whether its output can be turned down.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}': {why}. Check photon flux and watts.</source>
<translation>„{name}“: {why}. Photonenfluss und Watt prüfen.</translation>
</message>
<message>
<source>From the middle of the lamp's face to the canopy.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>About the lamp's own long (x) axis, through the middle of its face: above 0 its y side rises and its light turns to that side; 0 hangs level.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hours of light it has given so far.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Share of its light that the dust on it takes away.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tilted by {abs}° towards {side}</source>
<translation>um {abs}° nach {side} geneigt</translation>
</message>
</context>
<context>
<name>planner.plan.lining</name>
<message>
<source>open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>paint</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>barium-sulphate</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>board</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>plywood</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wood</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mirror</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tile</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>glass</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>aluminium-sheet</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Width of the mirror lobe (GGX alpha): 0 flat mirror, 0.25 creased film.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>How its reflectance is spread over the wavebands, as their proportions: the level is ``reflectance``, their mean over 400-700 nm. null: the same in all.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Where the numbers come from.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the reflectance of '{name}' ({reflectance}) must lie between its range ends {low} and {high}.</source>
<translation>der Reflexionsgrad von „{name}“ ({reflectance}) muss zwischen den Enden seiner Spanne liegen, {low} und {high}.</translation>
</message>
<message>
<source>Open (no surface)</source>
<translation>Offen (keine Fläche)</translation>
</message>
<message>
<source>By definition: what leaves through an opening does not come back.</source>
<translation>Per Definition: Was durch eine Öffnung hinausgeht, kommt nicht zurück.</translation>
</message>
<message>
<source>Upper edge above the floor.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Share of what the clean lining returns that dirt on it takes away.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the uppermost band of a wall must end at the ceiling (top: null).</source>
<translation>der oberste Streifen einer Wand muss an der Decke enden (top: null).</translation>
</message>
<message>
<source>only the uppermost band of a wall may end at the ceiling.</source>
<translation>nur der oberste Streifen einer Wand darf an der Decke enden.</translation>
</message>
<message>
<source>the bands of a wall must be listed from the floor up, each at least {said_length} high.</source>
<translation>die Streifen einer Wand müssen vom Boden aufwärts aufgeführt sein, jeder mindestens {said_length} hoch.</translation>
</message>
</context>
<context>
<name>planner.plan.lit</name>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod_hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>target</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>thickness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.plan.place</name>
<message>
<source>Housing of lamp {value}</source>
<translation>Gehäuse von Lampe {value}</translation>
</message>
<message>
<source>Canopy on obstacle {value}</source>
<translation>Blätterdach auf Hindernis {value}</translation>
</message>
<message>
<source> {value}</source>
<translation> {value}</translation>
</message>
<message>
<source>, band {value}</source>
<translation>, Streifen {value}</translation>
</message>
<message>
<source>{kind}_of_{_OF}_{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{kind}_{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{tag}_band_{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> ('{name}')</source>
<translation> („{name}“)</translation>
</message>
<message>
<source>the {words}</source>
<translation>{words}</translation>
</message>
<message>
<source>{words} (open door)</source>
<translation>{words} (offene Tür)</translation>
</message>
<message>
<source>{words}: {there}</source>
<translation>{words}: {there}</translation>
</message>
<message>
<source>above the canopy</source>
<translation>über dem Blätterdach</translation>
</message>
<message>
<source>above the plan's own canopy</source>
<translation>über dem eigenen Blätterdach des Plans</translation>
</message>
<message>
<source>band</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{text}' is no place; write for example wall-2, wall-2-band-1, ceiling, floor, lamp-1 or obstacle-1.</source>
<translation>„{text}“ ist keine Stelle; zum Beispiel wall-2, wall-2-band-1, ceiling, floor, lamp-1 oder obstacle-1 schreiben.</translation>
</message>
</context>
<context>
<name>planner.plan.plan</name>
<message>
<source>One cover per wall, in wall order.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the footprint has {wall_count} walls, but {len} wall covers are given; give one for each wall.</source>
<translation>der Grundriss hat {wall_count} Wände, angegeben sind aber {len} Wandauskleidungen; für jede Wand eine angeben.</translation>
</message>
<message>
<source>the canopy at {said_length} does not fit under the ceiling at {said_length2}; lower the canopy or raise the ceiling.</source>
<translation>das Blätterdach auf {said_length} passt nicht unter die Decke auf {said_length2}; das Blätterdach senken oder die Decke heben.</translation>
</message>
<message>
<source>two linings carry the key '{key}'; each key must be used once.</source>
<translation>zwei Auskleidungen haben den Schlüssel „{key}“; jeden Schlüssel nur einmal verwenden.</translation>
</message>
<message>
<source>the key 'open' stands for an opening; give the lining another key.</source>
<translation>der Schlüssel 'open' steht für eine Öffnung; der Auskleidung einen anderen geben.</translation>
</message>
<message>
<source>wall {k}</source>
<translation>Wand {k}</translation>
</message>
<message>
<source>obstacle {k}</source>
<translation>Hindernis {k}</translation>
</message>
<message>
<source>the ceiling</source>
<translation>die Decke</translation>
</message>
<message>
<source>the floor</source>
<translation>der Boden</translation>
</message>
<message>
<source>{place} is lined with '{key}', but the plan holds no lining of that key.</source>
<translation>{place} ist mit „{key}“ ausgekleidet, aber der Plan enthält keine Auskleidung mit diesem Schlüssel.</translation>
</message>
<message>
<source>lamp {number} ('{name}') hangs outside the space at x = {said_length}, y = {said_length2}; move it inside the footprint.</source>
<translation>Lampe {number} („{name}“) hängt außerhalb des Raums bei x = {said_length}, y = {said_length2}; in den Grundriss verschieben.</translation>
</message>
<message>
<source>the ceiling is there</source>
<translation>dort ist die Decke</translation>
</message>
<message>
<source>lamp {number}, hanging height</source>
<translation>Lampe {number}, Hängehöhe</translation>
</message>
<message>
<source>lamp {number} ('{name}'), {leans}, would reach {where}; tilt it less, or move it.</source>
<translation>Lampe {number} („{name}“), {leans}, würde {where} reichen; weniger neigen oder verschieben.</translation>
</message>
<message>
<source>through the ceiling</source>
<translation>durch die Decke</translation>
</message>
<message>
<source>down to the canopy</source>
<translation>bis ans Blätterdach</translation>
</message>
<message>
<source>through a wall</source>
<translation>durch eine Wand</translation>
</message>
<message>
<source>obstacle {number} ('{name}') stands outside the space at x = {said_length}, y = {said_length2}; move it inside the footprint.</source>
<translation>Hindernis {number} („{name}“) steht außerhalb des Raums bei x = {said_length}, y = {said_length2}; in den Grundriss verschieben.</translation>
</message>
<message>
<source>obstacle {number} ('{name}') reaches up to {said_length}, but the ceiling is at {said_length2}; lower it or make it thinner.</source>
<translation>Hindernis {number} („{name}“) reicht bis {said_length}, aber die Decke ist auf {said_length2}; senken oder dünner machen.</translation>
</message>
<message>
<source>are called</source>
<translation>heißen</translation>
</message>
<message>
<source>carry the key</source>
<translation>haben den Schlüssel</translation>
</message>
<message>
<source>two options {what} '{text}'; give each its own.</source>
<translation>zwei Varianten {what} „{text}“; jeder einen eigenen geben.</translation>
</message>
<message>
<source>Version of this file format.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Untitled plan</source>
<translation>Plan ohne Namen</translation>
</message>
<message>
<source>Key of the variant the others are measured against; null: the plan itself.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the baseline is '{baseline}', but no option has that key.</source>
<translation>die Basis ist „{baseline}“, aber keine Variante hat diesen Schlüssel.</translation>
</message>
<message>
<source>the plan has no option of the key '{key}'.</source>
<translation>der Plan hat keine Variante mit dem Schlüssel „{key}“.</translation>
</message>
</context>
<context>
<name>planner.plan.quantity</name>
<message>
<source>forbid</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>unit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>W</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>h</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>^[a-z0-9][a-z0-9_-]*$</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{number}{gap}{suffix}</source>
<translation>{number}{gap}{suffix}</translation>
</message>
<message>
<source>{strip} to {last}</source>
<translation>{strip} bis {last}</translation>
</message>
<message>
<source>'{strip}' is not a number; write for example {example}.</source>
<translation>„{strip}“ ist keine Zahl; zum Beispiel {example} schreiben.</translation>
</message>
<message>
<source>{lux} lx were read as {value} {PPFD_UNIT}: daylight (CIE D65) has {lux2} lx for 1, white LED lamps 53 to 73.</source>
<translation>{lux} lx wurden als {value} {PPFD_UNIT} gelesen: Tageslicht (CIE D65) hat {lux2} lx für 1, weiße LED-Lampen 53 bis 73.</translation>
</message>
<message>
<source>{words}: must be</source>
<translation>{words}: erlaubt ist</translation>
</message>
<message>
<source>must be</source>
<translation>erlaubt ist</translation>
</message>
<message>
<source>, not {given}</source>
<translation>, nicht {given}</translation>
</message>
<message>
<source>{lead} {limit_text}.</source>
<translation>{lead} {limit_text}.</translation>
</message>
<message>
<source>{bound_text}{but}</source>
<translation>{bound_text}{but}</translation>
</message>
<message>
<source> ({why})</source>
<translation> ({why})</translation>
</message>
<message>
<source>{value} {text}</source>
<translation>{value} {text}</translation>
</message>
<message>
<source>above</source>
<translation>mehr als</translation>
</message>
<message>
<source>at least</source>
<translation>mindestens</translation>
</message>
<message>
<source>at most {text}</source>
<translation>höchstens {text}</translation>
</message>
<message>
<source>from {text} to {text2}</source>
<translation>von {text} bis {text2}</translation>
</message>
<message>
<source> and </source>
<translation> und </translation>
</message>
<message>
<source>Write a value {words}.</source>
<translation>Einen Wert schreiben: {words}.</translation>
</message>
<message>
<source>Write a number.</source>
<translation>Eine Zahl schreiben.</translation>
</message>
<message>
<source>min</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>weeks</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>currency</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>months</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{said} means {value} {PPFD_UNIT}, more than twice full sun</source>
<translation>{said} heißt {value} {PPFD_UNIT}, mehr als das Doppelte voller Sonne</translation>
</message>
</context>
<context>
<name>planner.plan.refusal</name>
<message>
<source>greater_than_equal</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>greater_than</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>less_than_equal</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>less_than</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>float_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>float_parsing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>int_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>int_parsing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>int_from_float</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>int_parsing_size</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>string_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bool_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bool_parsing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tuple_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>list_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dict_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>model_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>model_attributes_type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>finite_number</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>string_unicode</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a number</source>
<translation>eine Zahl</translation>
</message>
<message>
<source>a whole number</source>
<translation>eine ganze Zahl</translation>
</message>
<message>
<source>a whole number of ordinary size</source>
<translation>eine ganze Zahl gewöhnlicher Größe</translation>
</message>
<message>
<source>a text in double quotes</source>
<translation>ein Text in doppelten Anführungszeichen</translation>
</message>
<message>
<source>true or false</source>
<translation>true oder false</translation>
</message>
<message>
<source>a list</source>
<translation>eine Liste</translation>
</message>
<message>
<source>an object with named fields</source>
<translation>ein Objekt mit benannten Feldern</translation>
</message>
<message>
<source>an ordinary number</source>
<translation>eine gewöhnliche Zahl</translation>
</message>
<message>
<source>plain text</source>
<translation>einfacher Text</translation>
</message>
<message>
<source>this value cannot be used</source>
<translation>dieser Wert ist nicht verwendbar</translation>
</message>
<message>
<source>{error_count} things in it fit no plan; it is probably not a plan file.</source>
<translation>{error_count} Dinge darin passen in keinen Plan; wahrscheinlich ist es keine Plandatei.</translation>
</message>
<message>
<source>unknown field '{_cut}'; check its spelling or remove it</source>
<translation>unbekanntes Feld „{_cut}“; Schreibweise prüfen oder entfernen</translation>
</message>
<message>
<source>{place}: {problem}{stop}</source>
<translation>{place}: {problem}{stop}</translation>
</message>
<message>
<source>{problem}{stop}</source>
<translation>{problem}{stop}</translation>
</message>
<message>
<source>must be {_WANTED}, not {_shown}</source>
<translation>muss {_WANTED} sein, nicht {_shown}</translation>
</message>
<message>
<source>ctx</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Value error, </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Input </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Should</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Input should </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>be </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>must be </source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>empty (null)</source>
<translation>leer (null)</translation>
</message>
<message>
<source>true</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>false</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{given}</source>
<translation>{given}</translation>
</message>
<message>
<source>the text '{_cut}'</source>
<translation>der Text „{_cut}“</translation>
</message>
<message>
<source>entry</source>
<translation>Eintrag</translation>
</message>
<message>
<source>entries</source>
<translation>Einträge</translation>
</message>
<message>
<source>needs at least {least} {entries}, not {context}</source>
<translation>braucht mindestens {least} {entries}, nicht {context}</translation>
</message>
<message>
<source>must be {get}, not {_shown}</source>
<translation>muss {get} sein, nicht {_shown}</translation>
</message>
<message>
<source>expected</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>one of the known words</source>
<translation>eines der bekannten Wörter</translation>
</message>
<message>
<source>value_error</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>missing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>literal_error</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>enum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>union_tag_invalid</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>union_tag_not_found</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>too_short</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>too_long</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>string_too_short</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>string_too_long</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>string_pattern_mismatch</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>error</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>is not valid</source>
<translation>ist nicht gültig</translation>
</message>
<message>
<source>is missing</source>
<translation>fehlt</translation>
</message>
<message>
<source>unknown kind '{_cut}'; known kinds are {context}</source>
<translation>unbekannte Art „{_cut}“; bekannt sind {context}</translation>
</message>
<message>
<source>does not say its kind (the field 'kind' is missing)</source>
<translation>nennt seine Art nicht (das Feld 'kind' fehlt)</translation>
</message>
<message>
<source>there may be at most {context}, and there are more</source>
<translation>mehr als {context} können es nicht sein</translation>
</message>
<message>
<source>must not be empty</source>
<translation>darf nicht leer sein</translation>
</message>
<message>
<source>may be at most {context} characters long, not {len}</source>
<translation>darf höchstens {context} Zeichen lang sein, nicht {len}</translation>
</message>
<message>
<source>must be made of small letters, digits, '-' and '_' and start with a letter or digit, not {_shown}</source>
<translation>muss aus kleinen Buchstaben, Ziffern, '-' und '_' bestehen und mit einem Buchstaben oder einer Ziffer beginnen, nicht {_shown}</translation>
</message>
<message>
<source>angles_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>azimuths_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>at</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>aside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bar_width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>beam_uncertainty_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>board_reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>door_open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>format</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gain_uncertainty</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging_height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod_hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>price_per_kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ppf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ppf_uncertainty</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>relative</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room_hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room_light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>response_angles_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>response_relative</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rotation_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>specular_share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tilt_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lux_per_umol</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>top</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>warm_up_minutes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>angles</source>
<translation>Winkel</translation>
</message>
<message>
<source>azimuths</source>
<translation>Azimutwinkel</translation>
</message>
<message>
<source>time of the reading</source>
<translation>Zeit des Messwerts</translation>
</message>
<message>
<source>set aside</source>
<translation>beiseitegelegt</translation>
</message>
<message>
<source>bar width</source>
<translation>Leistenbreite</translation>
</message>
<message>
<source>doubt of the beam angle</source>
<translation>Ungenauigkeit des Abstrahlwinkels</translation>
</message>
<message>
<source>reflectance of the board</source>
<translation>Reflexionsgrad des Lochbretts</translation>
</message>
<message>
<source>door open</source>
<translation>Tür offen</translation>
</message>
<message>
<source>format number</source>
<translation>Formatnummer</translation>
</message>
<message>
<source>uncertainty of the gain</source>
<translation>Eichunsicherheit</translation>
</message>
<message>
<source>hanging height</source>
<translation>Hängehöhe</translation>
</message>
<message>
<source>upper end</source>
<translation>oberes Ende</translation>
</message>
<message>
<source>body length</source>
<translation>Länge</translation>
</message>
<message>
<source>lower end</source>
<translation>unteres Ende</translation>
</message>
<message>
<source>output</source>
<translation>Dimmung</translation>
</message>
<message>
<source>photoperiod</source>
<translation>Beleuchtungsdauer</translation>
</message>
<message>
<source>price of a kWh</source>
<translation>Preis einer kWh</translation>
</message>
<message>
<source>photon flux</source>
<translation>Photonenfluss</translation>
</message>
<message>
<source>uncertainty of the photon flux</source>
<translation>Unsicherheit des Photonenflusses</translation>
</message>
<message>
<source>intensities</source>
<translation>Lichtstärken</translation>
</message>
<message>
<source>hours of room light</source>
<translation>Stunden Zimmerlicht</translation>
</message>
<message>
<source>room light</source>
<translation>Licht des Zimmers</translation>
</message>
<message>
<source>angles of the response</source>
<translation>Winkel der Kosinuskorrektur</translation>
</message>
<message>
<source>response</source>
<translation>Kosinuskorrektur</translation>
</message>
<message>
<source>rotation</source>
<translation>Drehung</translation>
</message>
<message>
<source>specular share</source>
<translation>Spiegelanteil</translation>
</message>
<message>
<source>tilt</source>
<translation>Neigung</translation>
</message>
<message>
<source>lux per {PPFD_UNIT}</source>
<translation>Lux je {PPFD_UNIT}</translation>
</message>
<message>
<source>upper edge</source>
<translation>Oberkante</translation>
</message>
<message>
<source>warm-up</source>
<translation>Warmlaufen</translation>
</message>
<message>
<source>body width</source>
<translation>Breite</translation>
</message>
<message>
<source>bands</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cautions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>footprint</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>goods</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>linings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>points</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>readings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>schedule</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>surveys</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>variants</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>walls</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>angle</source>
<translation>Winkel</translation>
</message>
<message>
<source>azimuth</source>
<translation>Azimutwinkel</translation>
</message>
<message>
<source>band</source>
<translation>Streifen</translation>
</message>
<message>
<source>caution</source>
<translation>Warnhinweis</translation>
</message>
<message>
<source>corner</source>
<translation>Ecke</translation>
</message>
<message>
<source>lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>hole</source>
<translation>Loch</translation>
</message>
<message>
<source>reading</source>
<translation>Messwert</translation>
</message>
<message>
<source>intensity</source>
<translation>Lichtstärke</translation>
</message>
<message>
<source>angle of the response</source>
<translation>Winkel der Kosinuskorrektur</translation>
</message>
<message>
<source>stage</source>
<translation>Stadium</translation>
</message>
<message>
<source>survey</source>
<translation>Messung</translation>
</message>
<message>
<source>option</source>
<translation>Variante</translation>
</message>
<message>
<source>wall</source>
<translation>Wand</translation>
</message>
<message>
<source>body</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>profile</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>target</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>costs</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>model</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>entry {value}</source>
<translation>Eintrag {value}</translation>
</message>
<message>
<source>{known_as}, entry</source>
<translation>{known_as}, Eintrag</translation>
</message>
<message>
<source>plane</source>
<translation>Ebene</translation>
</message>
<message>
<source>{word} {value}</source>
<translation>{word} {value}</translation>
</message>
</context>
<context>
<name>planner.plan.space</name>
<message>
<source>Corners of the floor plan, counter-clockwise, as [x, y] in metres.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Inside height from floor to ceiling.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Number of the wall that opens.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Whether the door stands open.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>PPFD that the room outside sends onto the open door; 0 where it is dark.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hours a day the room outside is so light.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the door is on wall {value}, but the footprint has {len} walls.</source>
<translation>die Tür ist an Wand {value}, aber der Grundriss hat {len} Wände.</translation>
</message>
<message>
<source>the door stands open, but no wall is named as the door.</source>
<translation>die Tür steht offen, aber keine Wand ist als Tür genannt.</translation>
</message>
<message>
<source>near</source>
<translation>nahe</translation>
</message>
<message>
<source>far</source>
<translation>ferne</translation>
</message>
<message>
<source>right</source>
<translation>rechte</translation>
</message>
<message>
<source>left</source>
<translation>linke</translation>
</message>
<message>
<source>wall {value} of the footprint is shorter than {said_length}; move or remove a corner.</source>
<translation>Wand {value} des Grundrisses ist kürzer als {said_length}; eine Ecke verschieben oder entfernen.</translation>
</message>
<message>
<source>walls {value} and {value2} of the footprint cross or touch; the outline must not cut itself.</source>
<translation>die Wände {value} und {value2} des Grundrisses kreuzen oder berühren sich; der Umriss darf sich nicht schneiden.</translation>
</message>
<message>
<source>the corners of the footprint run clockwise; list them counter-clockwise.</source>
<translation>die Ecken des Grundrisses laufen im Uhrzeigersinn; gegen den Uhrzeigersinn angeben.</translation>
</message>
<message>
<source>the footprint encloses less than 50 cm²; make the space larger.</source>
<translation>der Grundriss umschließt weniger als 50 cm²; den Raum größer machen.</translation>
</message>
<message>
<source>How its reflectance is spread over the wavebands, as their proportions; null: the same in all of them.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Height of the plane above the floor.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Diffuse reflectance of a closed canopy, 400-700 nm.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Diffuse reflectance of the leaves, 400-700 nm.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Whether figures, options and searches speak of this canopy.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Shelf</source>
<translation>Regalbrett</translation>
</message>
<message>
<source>Centre.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Height of its underside above the floor.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Along its own x axis.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Along its own y axis.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>From the underside up.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Its material; 'open' stands for black here.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>What grows on its top.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.plan.spectrum</name>
<message>
<source>unit</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>nm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Where the numbers come from.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the spectrum has {len} wavelengths but {len2} values.</source>
<translation>das Spektrum hat {len} Wellenlängen, aber {len2} Werte.</translation>
</message>
<message>
<source>the wavelengths of a spectrum must rise from each to the next.</source>
<translation>die Wellenlängen eines Spektrums müssen stetig steigen.</translation>
</message>
<message>
<source>the spectrum is empty: at least one value must be above 0.</source>
<translation>das Spektrum ist leer: Mindestens ein Wert muss über 0 liegen.</translation>
</message>
<message>
<source>the spectrum has no light between 400 and 700 nm, so nothing can be converted to or from PPFD.</source>
<translation>das Spektrum hat zwischen 400 und 700 nm kein Licht, also lässt sich nichts in PPFD oder daraus umrechnen.</translation>
</message>
<message>
<source>The spectrum begins at {first} nm, still at {value} of its peak: the photons below are not counted.</source>
<translation>Das Spektrum beginnt bei {first} nm, dort noch mit {value} seines Maximums: Die Photonen darunter sind nicht gezählt.</translation>
</message>
<message>
<source>The spectrum ends at {last} nm, still at {value} of its peak: the photons above are not counted.</source>
<translation>Das Spektrum endet bei {last} nm, dort noch mit {value} seines Maximums: Die Photonen darüber sind nicht gezählt.</translation>
</message>
<message>
<source>The spectrum ends at {last} nm: far-red photons between there and 800 nm are not counted.</source>
<translation>Das Spektrum endet bei {last} nm: Dunkelrote Photonen von dort bis 800 nm sind nicht gezählt.</translation>
</message>
<message>
<source>Between {widest} and {widest2} nm there is no sample: with steps above {_WIDE_STEP_NM} nm narrow lines are missed.</source>
<translation>Zwischen {widest} und {widest2} nm gibt es keinen Wert: Bei Schritten über {_WIDE_STEP_NM} nm werden schmale Linien verpasst.</translation>
</message>
</context>
<context>
<name>planner.plan.survey</name>
<message>
<source>Quantum sensor</source>
<translation>Quantensensor</translation>
</message>
<message>
<source>Half-width of the relative calibration error, common to all.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Relative standard deviation of one reading, with placement.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Angles from upright of the directional response.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Response relative to an ideal cosine receiver.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Height of the receiving face above the board or canopy.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the directional response has {len} angles but {len2} values.</source>
<translation>die Kosinuskorrektur hat {len} Winkel, aber {len2} Werte.</translation>
</message>
<message>
<source>the directional response needs at least two angles, or none.</source>
<translation>die Kosinuskorrektur braucht mindestens zwei Winkel oder keinen.</translation>
</message>
<message>
<source>the angles of the directional response must rise.</source>
<translation>die Winkel der Kosinuskorrektur müssen steigen.</translation>
</message>
<message>
<source>Of the lamps, as measured with a tape.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Of the receiving face; common to all surveys of a meter.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Of the board on the plane.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Relative: the lamps set up and warmed up anew.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Relative change of the lamps from the first reading to the last.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Part of the door's wall that may have stood open; 0: none.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Relative: the meter on light from all sides against light from the lamps; common to all its surveys.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Strip along the walls without holes.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hole the sensor stands in.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Counts from 1.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Seconds from the first reading of the survey; null: not noted.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Kept, but counts in no figure and in no calibration.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Survey</source>
<translation>Messung</translation>
</message>
<message>
<source>Lux per {PPFD_UNIT} by which lux readings were divided.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Output of all lamps.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Of the lamps over the canopy read, in a rack those of its tier: from the face to the plan's own canopy.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Height above the floor of the obstacle's top whose canopy was read; null: the plan's own canopy.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>On all walls; the opening: no walls and no ceiling.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>What the readings were taken on; null: nobody said.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Of a board that fills the plane; null: as the canopy it lies on.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>How the holes were laid out.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the survey '{name}' holds a reading of hole {hole}, but has only {len} holes.</source>
<translation>die Messung „{name}“ enthält einen Messwert von Loch {hole}, hat aber nur {len} Löcher.</translation>
</message>
<message>
<source>two surveys carry the key '{key}'; each key must be used once.</source>
<translation>zwei Messungen haben den Schlüssel „{key}“; jeden Schlüssel nur einmal verwenden.</translation>
</message>
</context>
<context>
<name>planner.plan.survey_edits</name>
<message>
<source>value</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>aside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>board_reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{wanted}-{number}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wavebands</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value} cm</source>
<translation>{value} cm</translation>
</message>
<message>
<source>some holes of the survey lie beside the canopy {level} above the floor that it was read on; all of them must lie on that obstacle's top.</source>
<translation>einige Löcher der Messung liegen neben dem Blätterdach {level} über dem Boden, auf dem gemessen wurde; sie müssen alle auf der Oberseite dieses Hindernisses liegen.</translation>
</message>
<message>
<source>no obstacle carries a canopy {level} above the floor, where the survey was read; the plan needs the obstacle as it stood, with a canopy on its top.</source>
<translation>kein Hindernis trägt {level} über dem Boden, wo gemessen wurde, ein Blätterdach; der Plan braucht das Hindernis so, wie es stand, mit einem Blätterdach auf seiner Oberseite.</translation>
</message>
<message>
<source>profile</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.plan.target</name>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the target band must rise: its upper end {high} is not above {low}.</source>
<translation>der Zielbereich muss steigen: Sein oberes Ende {high} liegt nicht über {low}.</translation>
</message>
<message>
<source>ppfd</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kind</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Height of the canopy above the floor.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.plan.tiers</name>
<message>
<source>above the canopy under each</source>
<translation>über dem Blätterdach unter jeder</translation>
</message>
<message>
<source>above the canopy on obstacle {value} ('{name}')</source>
<translation>über dem Blätterdach auf Hindernis {value} („{name}“)</translation>
</message>
<message>
<source>{said_length} {above}</source>
<translation>{said_length} {above}</translation>
</message>
</context>
<context>
<name>planner.plan.turning</name>
<message>
<source>the ceiling is there</source>
<translation>dort ist die Decke</translation>
</message>
<message>
<source>the canopy is there</source>
<translation>dort ist das Blätterdach</translation>
</message>
<message>
<source>lamp {value} meets '{name}'</source>
<translation>Lampe {value} stößt an '{name}'</translation>
</message>
<message>
<source>tilt_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a wall is there</source>
<translation>dort ist eine Wand</translation>
</message>
<message>
<source>thickness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp {value} hangs from it and is at the canopy</source>
<translation>Lampe {value} hängt daran und ist am Blätterdach</translation>
</message>
<message>
<source>'{name}' stands on it and is at the ceiling</source>
<translation>'{name}' steht darauf und ist an der Decke</translation>
</message>
<message>
<source>nearer it may scorch the leaves</source>
<translation>näher kann sie die Blätter verbrennen</translation>
</message>
<message>
<source>nearer it may scorch the leaves on '{name}'</source>
<translation>näher kann sie die Blätter auf „{name}“ verbrennen</translation>
</message>
<message>
<source>'{name}' is there</source>
<translation>dort ist „{name}“</translation>
</message>
<message>
<source>the lamp cannot be dimmed</source>
<translation>die Lampe lässt sich nicht dimmen</translation>
</message>
<message>
<source>most crops need {LEAST_DARK_HOURS} dark hours</source>
<translation>die meisten Kulturen brauchen {LEAST_DARK_HOURS} dunkle Stunden</translation>
</message>
<message>
<source>the walls are there</source>
<translation>dort sind die Wände</translation>
</message>
<message>
<source>no lamp gives more than {MOST_PER_JOULE} µmol per joule, and this one draws {watts} W</source>
<translation>keine Lampe gibt mehr als {MOST_PER_JOULE} µmol je Joule, und diese nimmt {watts} W auf</translation>
</message>
<message>
<source>no lamp gives more than {MOST_PER_JOULE} µmol per joule, and this one gives {ppf}</source>
<translation>keine Lampe gibt mehr als {MOST_PER_JOULE} µmol je Joule, und diese gibt {ppf}</translation>
</message>
<message>
<source>{why} {FLUX_UNIT}</source>
<translation>{why} {FLUX_UNIT}</translation>
</message>
<message>
<source>{count} bars</source>
<translation>{count} Leisten</translation>
</message>
<message>
<source>bars of {said_length}</source>
<translation>Leisten von {said_length}</translation>
</message>
<message>
<source>a width of {said_length}</source>
<translation>einer Breite von {said_length}</translation>
</message>
<message>
<source>{bars} lie in it</source>
<translation>{bars} liegen darin</translation>
</message>
<message>
<source>{one} lie in {wide}</source>
<translation>{one} liegen in {wide}</translation>
</message>
<message>
<source>{bars} lie in {wide}</source>
<translation>{bars} liegen in {wide}</translation>
</message>
<message>
<source>ceiling</source>
<translation>die Decke</translation>
</message>
<message>
<source>next edge</source>
<translation>die nächste Kante</translation>
</message>
<message>
<source>the edge below is at {said_length}</source>
<translation>die Kante darunter ist auf {said_length}</translation>
</message>
<message>
<source>the floor is there</source>
<translation>dort ist der Boden</translation>
</message>
<message>
<source>the {what} is at {said_length}</source>
<translation>{what} ist auf {said_length}</translation>
</message>
<message>
<source>swept-{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name}, taken as {value} %</source>
<translation>{name}, genommen als {value} %</translation>
</message>
<message>
<source>A value tried in place of {reflectance}; that one came from: {source}</source>
<translation>Ein statt {reflectance} versuchter Wert; jener kam aus: {source}</translation>
</message>
<message>
<source>the band {value} at {text}</source>
<translation>der Bereich {value} bei {text}</translation>
</message>
<message>
<source>ends</source>
<translation>endet</translation>
</message>
<message>
<source>begins</source>
<translation>beginnt</translation>
</message>
</context>
<context>
<name>planner.plan.variant_edits</name>
<message>
<source>variant-{number}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> ({number})</source>
<translation> ({number})</translation>
</message>
<message>
<source>{name}, copy</source>
<translation>{name}, Kopie</translation>
</message>
<message>
<source>{name}, before</source>
<translation>{name}, vorher</translation>
</message>
<message>
<source>{ALL_WALLS}: </source>
<translation>{ALL_WALLS}: </translation>
</message>
<message>
<source>{texts} and {value} more</source>
<translation>{texts} und {value} weitere</translation>
</message>
<message>
<source>a range of heights needs a lower end, a higher one and at least two.</source>
<translation>eine Reihe von Höhen braucht ein unteres Ende, ein höheres und mindestens zwei Höhen.</translation>
</message>
<message>
<source>{len} options are asked for, but a plan keeps {MAX_VARIANTS} and has room for {room}; try fewer at once, or take some out.</source>
<translation>{len} Varianten sind verlangt, aber ein Plan behält {MAX_VARIANTS} und hat Platz für {room}; weniger auf einmal versuchen oder einige herausnehmen.</translation>
</message>
<message>
<source>{words}: </source>
<translation>{words}: </translation>
</message>
<message>
<source>{lead}{name}</source>
<translation>{lead}{name}</translation>
</message>
<message>
<source>{lamp} x {name}</source>
<translation>{lamp} × {name}</translation>
</message>
<message>
<source>{label} {said}</source>
<translation>{label} {said}</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' cannot be: {refusal}</source>
<translation>„{name}“ geht nicht: {refusal}</translation>
</message>
<message>
<source>no lamp hangs in the space; hang one first.</source>
<translation>im Raum hängt keine Lampe; zuerst eine aufhängen.</translation>
</message>
</context>
<context>
<name>planner.plan.wavebands</name>
<message>
<source>blue</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>green</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>red</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>far_red</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Blue</source>
<translation>Blau</translation>
</message>
<message>
<source>Green</source>
<translation>Grün</translation>
</message>
<message>
<source>Red</source>
<translation>Rot</translation>
</message>
<message>
<source>Far-red</source>
<translation>Fernrot</translation>
</message>
<message>
<source>400-500 nm.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>500-600 nm.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>600-700 nm.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>700-750 nm.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>after</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>at least one of blue, green and red must be above 0.</source>
<translation>mindestens eine der Zahlen für Blau, Grün und Rot muss über 0 liegen.</translation>
</message>
</context>
<context>
<name>planner.reports.advice</name>
<message>
<source>output_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{missing}</source>
<translation>{missing}</translation>
</message>
<message>
<source>Even at full output no spot reaches the band; its middle needs about {times} times this light: hang more or stronger lamps, or hang them lower.</source>
<translation>Selbst bei voller Leistung erreicht keine Stelle den Zielbereich; für seine Mitte wäre etwa {times}-mal so viel Licht nötig: mehr oder stärkere Lampen aufhängen, oder sie tiefer hängen.</translation>
</message>
<message>
<source>the lamp</source>
<translation>der Lampe</translation>
</message>
<message>
<source>all lamps</source>
<translation>allen Lampen</translation>
</message>
<message>
<source>{lamps} at {value} % output</source>
<translation>{lamps} auf {value} % Leistung</translation>
</message>
<message>
<source>all lamps at {percent} of their present output</source>
<translation>allen Lampen auf {percent} ihrer jetzigen Leistung</translation>
</message>
<message>
<source>With {setting}, {share} of all canopies would lie inside their bands.</source>
<translation>Mit {setting} lägen {share} aller Blätterdächer in ihren Bändern.</translation>
</message>
<message>
<source>With {setting}, {share} of the canopy would lie inside the band.</source>
<translation>Mit {setting} lägen {share} des Blätterdachs im Zielbereich.</translation>
</message>
<message>
<source>the lamps</source>
<translation>den Lampen</translation>
</message>
<message>
<source>{percent} of the canopy lies over the band, and {lamps} cannot be dimmed: hang {lamps} higher, or light fewer hours a day where the band is one of DLI.</source>
<translation>{percent} des Blätterdachs liegen über dem Zielbereich, und Dimmen geht bei {lamps} nicht: höher hängen oder, bei einem DLI-Bereich, weniger Stunden am Tag beleuchten.</translation>
</message>
<message>
<source>{name}: +{value} points of reflectance bring {signed} {PPFD_UNIT} to the mean, {signed2} to the minimum.</source>
<translation>{name}: +{value} Punkte Reflexionsgrad bringen dem Mittel {signed} {PPFD_UNIT}, dem Minimum {signed2}.</translation>
</message>
<message>
<source>{value}{text}</source>
<translation>{value}{text}</translation>
</message>
<message>
<source>{name}: {signed} {PPFD_UNIT} to the mean, {signed2} to the minimum</source>
<translation>{name}: {signed} {PPFD_UNIT} zum Mittel, {signed2} zum Minimum</translation>
</message>
<message>
<source>Here {shown} {PPFD_UNIT}, and nothing about it is in doubt.</source>
<translation>Hier {shown} {PPFD_UNIT}, und nichts daran ist zweifelhaft.</translation>
</message>
<message>
<source>Here {shown} ± {half}</source>
<translation>Hier {shown} ± {half}</translation>
</message>
<message>
<source>, {_odds}</source>
<translation>, {_odds}</translation>
</message>
<message>
<source>{text}.</source>
<translation>{text}.</translation>
</message>
<message>
<source>{text}. {measured} narrows it most, at best to ± {narrowed}.</source>
<translation>{text}. {measured} engt es am meisten ein, bestenfalls auf ± {narrowed}.</translation>
</message>
<message>
<source>under</source>
<translation>unter dem</translation>
</message>
<message>
<source>inside</source>
<translation>im</translation>
</message>
<message>
<source>over</source>
<translation>über dem</translation>
</message>
<message>
<source>surely {side} the band</source>
<translation>sicher {side} Zielbereich</translation>
</message>
<message>
<source>{side} the band with {max} in 10</source>
<translation>{side} Zielbereich mit {max} von 10</translation>
</message>
<message>
<source>{name} on {inside}: {brought} {PPFD_UNIT} to the mean.</source>
<translation>{name}, {inside}: {brought} {PPFD_UNIT} zum Mittel.</translation>
</message>
<message>
<source>{name}: {came} of the canopy's light met it on the way</source>
<translation>{name}: {came} des Lichts auf dem Blätterdach trafen unterwegs auf sie</translation>
</message>
<message>
<source>{name}: {came} of the light on {inside} met it on the way</source>
<translation>{name}: {came} des Lichts ({inside}) trafen unterwegs auf sie</translation>
</message>
<message>
<source>{text}; ten points more of reflectance bring {signed} {PPFD_UNIT} to the mean.</source>
<translation>{text}; zehn Punkte mehr Reflexionsgrad bringen dem Mittel {signed} {PPFD_UNIT}.</translation>
</message>
</context>
<context>
<name>planner.reports.board</name>
<message>
<source>A</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{letters}{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>this board would take {value} sheets of paper; mark the holes by the coordinates of the recording sheet instead.</source>
<translation>dieses Lochbrett bräuchte {value} Blatt Papier; die Löcher stattdessen nach den Koordinaten des Messblatts anzeichnen.</translation>
</message>
<message>
<source>Survey board: {value}</source>
<translation>Lochbrett: {value}</translation>
</message>
<message>
<source>{name}, {name2}</source>
<translation>{name}, {name2}</translation>
</message>
<message>
<source>
≈ {expected}</source>
<translation>
≈ {expected}</translation>
</message>
<message>
<source>glue</source>
<translation>Leim</translation>
</message>
<message>
<source>cut</source>
<translation>ab</translation>
</message>
<message>
<source>How the {len} sheets go together</source>
<translation>Wie die {len} Blätter zusammengehören</translation>
</message>
<message>
<source>Seen from above; the near side is down.</source>
<translation>Von oben gesehen; die nahe Seite ist unten.</translation>
</message>
<message>
<source>Cut out, the board measures {value} by {value2} mm.</source>
<translation>Ausgeschnitten misst das Lochbrett {value} × {value2} mm.</translation>
</message>
<message>
<source>Cut each sheet along its right and upper edge where it says so, lay it over the strip of</source>
<translation>Jedes Blatt rechts und oben abschneiden, wo „ab“ steht, bis zur Strichlinie auf den Streifen</translation>
</message>
<message>
<source>its neighbour up to the dashed line, cross on cross, and glue.</source>
<translation>seines Nachbarn („Leim“) legen, Kreuz auf Kreuz, und festkleben.</translation>
</message>
<message>
<source>The door is on the {side} side, a thick grey edge.</source>
<translation>Tür: {side} Seite, dicke graue Kante.</translation>
</message>
<message>
<source>This bar is 100 mm long. Print at 100 %, without fitting.</source>
<translation>Balken: 100 mm lang. Mit 100 % drucken, ohne Anpassen.</translation>
</message>
<message>
<source>The near side is down. Cut {CLEARANCE_MM} mm inside the walls, along the line</source>
<translation>Nahe Seite unten. {CLEARANCE_MM} mm innerhalb der Wände schneiden, an der Linie</translation>
</message>
<message>
<source>. {_door_words}</source>
<translation>. {_door_words}</translation>
</message>
<message>
<source>Sheet {name} of {len}</source>
<translation>Blatt {name} von {len}</translation>
</message>
</context>
<context>
<name>planner.reports.build_sheet</name>
<message>
<source>What stands in the space is taken as made of its material; it is cut for only where that is sold by the roll or sheet, by what was said of costs.</source>
<translation>Was im Raum steht, gilt als aus seinem Material gemacht; zugeschnitten wird dafür nur, wo es nach den Angaben zu den Kosten als Rolle oder Platte verkauft wird.</translation>
</message>
<message>
<source>{number}{chr}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>a</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Hook</source>
<translation>Haken</translation>
</message>
<message>
<source>Cord</source>
<translation>Schnur</translation>
</message>
<message>
<source>Lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>Under</source>
<translation>Unter</translation>
</message>
<message>
<source>{value}{value2}</source>
<translation>{value}{value2}</translation>
</message>
<message>
<source>, {leans}</source>
<translation>, {leans}</translation>
</message>
<message>
<source>ceiling</source>
<translation>Decke</translation>
</message>
<message>
<source>{value}: {name}</source>
<translation>{value}: {name}</translation>
</message>
<message>
<source>Hooks and cords down to the lamp, from the ceiling or the obstacle over it</source>
<translation>Haken und Schnüre hinab zur Lampe, von der Decke oder dem Hindernis darüber</translation>
</message>
<message>
<source>Hooks in the ceiling, cords from there down to the lamp</source>
<translation>Haken in der Decke, Schnüre von dort hinab zur Lampe</translation>
</message>
<message>
<source>All in {value}, measured inside, square from {first} and {second}. Measure the space before you drill or cut: the plan is as right as what was typed.</source>
<translation>Alles in {value}, innen gemessen, rechtwinklig von {first} und {second}. Vor dem Bohren oder Schneiden den Raum nachmessen: Der Plan stimmt nur so weit wie das Eingetippte.</translation>
</message>
<message>
<source>centimetres</source>
<translation>Zentimetern</translation>
</message>
<message>
<source>inches</source>
<translation>Zoll</translation>
</message>
<message>
<source>Long lamps hang a quarter of their length from either end, broad ones at four such points; where a lamp has eyes of its own, put the hooks over those. To the cord add what knots and hooks take.</source>
<translation>Lange Lampen hängen ein Viertel ihrer Länge von jedem Ende, breite an vier solchen Punkten; hat eine Lampe eigene Ösen, die Haken darüber setzen. Zur Schnur zugeben, was Knoten und Haken brauchen.</translation>
</message>
<message>
<source>build</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Stage</source>
<translation>Stadium</translation>
</message>
<message>
<source>Canopy at</source>
<translation>Blätterdach auf</translation>
</message>
<message>
<source>Cords over the stages</source>
<translation>Schnüre über die Stadien</translation>
</message>
<message>
<source>Piece</source>
<translation>Stück</translation>
</message>
<message>
<source>Of</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>Cut or paint</source>
<translation>Zuschnitt oder Anstrich</translation>
</message>
<message>
<source>Cut</source>
<translation>Zuschnitt</translation>
</message>
<message>
<source>From</source>
<translation>Von</translation>
</message>
<message>
<source>Cuts; {over} {value} over on every side but of boards and at the door; what is there already needs none</source>
<translation>Zuschnitte; an jeder Seite {over} {value} mehr, nur bei Platten und an der Tür nicht; was schon da ist, braucht keinen</translation>
</message>
<message>
<source>paint {text}</source>
<translation>{text} streichen</translation>
</message>
<message>
<source>Roll</source>
<translation>Rolle</translation>
</message>
<message>
<source>Sheet</source>
<translation>Platte</translation>
</message>
<message>
<source>{kind} {value}: {on_tape} along, {on_tape2} across</source>
<translation>{kind} {value}: {on_tape} längs, {on_tape2} quer</translation>
</message>
<message>
<source>{on_tape} × {on_tape2}</source>
<translation>{on_tape} × {on_tape2}</translation>
</message>
<message>
<source>{count} survey{value}</source>
<translation>{count} Messung{value}</translation>
</message>
<message>
<source>s</source>
<translation>en</translation>
</message>
<message>
<source>no survey</source>
<translation>keine Messung</translation>
</message>
<message>
<source>There is no survey {number}: this plan has {has}.</source>
<translation>Es gibt keine Messung {number}: dieser Plan hat {has}.</translation>
</message>
<message>
<source>of '{name}'</source>
<translation>von „{name}“</translation>
</message>
<message>
<source>by the rule of EN 12464-1</source>
<translation>nach der Regel von EN 12464-1</translation>
</message>
<message>
<source>The meter goes to {count} holes {said}: print the survey board for them.</source>
<translation>Das Messgerät kommt an {count} Löcher {said}: dafür das Lochbrett drucken.</translation>
</message>
<message>
<source>Hole</source>
<translation>Loch</translation>
</message>
<message>
<source>{count} of {len}</source>
<translation>{count} von {len}</translation>
</message>
<message>
<source>{count}</source>
<translation>{count}</translation>
</message>
<message>
<source>Where the meter stands ({of} holes {said})</source>
<translation>Wo das Messgerät steht ({of} Löcher {said})</translation>
</message>
</context>
<context>
<name>planner.reports.cautions</name>
<message>
<source>mains</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>clearance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{title}: {join}</source>
<translation>{title}: {join}</translation>
</message>
<message>
<source>{count} lamp{value}</source>
<translation>{count} Lampe{value}</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>heat</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{RISE_K}</source>
<translation>{RISE_K}</translation>
</message>
<message>
<source>{_name_at} on {inside}</source>
<translation>{_name_at} ({inside})</translation>
</message>
<message>
<source>eyes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mould</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>co2</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{part}.</source>
<translation>{part}.</translation>
</message>
</context>
<context>
<name>planner.reports.chapters</name>
<message>
<source>Canopy and hanging heights of a stage are those of the canopy by which the plan is judged; elsewhere lamps are told from the plan's own.</source>
<translation>Höhe des Blätterdachs und Hängehöhe eines Stadiums gelten dem Blätterdach, nach dem der Plan beurteilt wird; sonst zählen Lampen vom eigenen des Plans aus.</translation>
</message>
<message>
<source>Grow space light planner {__version__}</source>
<translation>Grow space light planner {__version__}</translation>
</message>
<message>
<source>, {isoformat}</source>
<translation>, {isoformat}</translation>
</message>
<message>
<source>. {judged}</source>
<translation>. {judged}</translation>
</message>
<message>
<source>, beam {beam_angle_deg} ± {beam_uncertainty_deg}°</source>
<translation>, Abstrahlwinkel {beam_angle_deg} ± {beam_uncertainty_deg}°</translation>
</message>
<message>
<source>closed leaves</source>
<translation>geschlossene Blätter</translation>
</message>
<message>
<source>an open level</source>
<translation>offene Ebene</translation>
</message>
<message>
<source>canopy at {by_tape} ({closed})</source>
<translation>Blätterdach auf {by_tape} ({closed})</translation>
</message>
<message>
<source>{by_tape} wide, {by_tape2} deep, {by_tape3} high inside, {text} of floor; {canopy}.</source>
<translation>{by_tape} breit, {by_tape2} tief, innen {by_tape3} hoch, {text} Boden; {canopy}.</translation>
</message>
<message>
<source>Lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>Model</source>
<translation>Modell</translation>
</message>
<message>
<source>x, y ({u})</source>
<translation>x, y ({u})</translation>
</message>
<message>
<source>{label} ({u})</source>
<translation>{label} ({u})</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Output (%)</source>
<translation>Dimmung (%)</translation>
</message>
<message>
<source>W</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{number}{value}{value2}</source>
<translation>{number}{value}{value2}</translation>
</message>
<message>
<source>{name}{_beam}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{on_tape}, {on_tape2}</source>
<translation>{on_tape}, {on_tape2}</translation>
</message>
<message>
<source>{output_percent}</source>
<translation>{output_percent}</translation>
</message>
<message>
<source>{number} ± {banded}</source>
<translation>{number} ± {banded}</translation>
</message>
<message>
<source>Lamps</source>
<translation>Lampen</translation>
</message>
<message>
<source>As old and dirty as it is: {listed}.</source>
<translation>So alt und schmutzig, wie er ist: {listed}.</translation>
</message>
<message>
<source>{percent} ({percent2} to {percent3})</source>
<translation>{percent} ({percent2} bis {percent3})</translation>
</message>
<message>
<source>Lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>Where</source>
<translation>Wo</translation>
</message>
<message>
<source>Reflects (from – to)</source>
<translation>Reflexion (von – bis)</translation>
</message>
<message>
<source>Of it as a mirror</source>
<translation>Davon spiegelnd</translation>
</message>
<message>
<source>Linings</source>
<translation>Auskleidungen</translation>
</message>
<message>
<source>{name}: {value}</source>
<translation>{name}: {value}</translation>
</message>
<message>
<source>no source is given</source>
<translation>keine Quelle genannt</translation>
</message>
<message>
<source>The canopies that hang over it, on the same scale.</source>
<translation>Die Blätterdächer, die darüber hängen, mit derselben Skala.</translation>
</message>
<message>
<source>The plan and its options on the same scale.</source>
<translation>Der Plan und seine Varianten auf derselben Skala.</translation>
</message>
<message>
<source>{value} more options are in the table only.</source>
<translation>{value} weitere Varianten stehen nur in der Tabelle.</translation>
</message>
<message>
<source> {spread}</source>
<translation> {spread}</translation>
</message>
<message>
<source>Figure</source>
<translation>Kennzahl</translation>
</message>
<message>
<source>Value</source>
<translation>Wert</translation>
</message>
<message>
<source>Unit</source>
<translation>Einheit</translation>
</message>
<message>
<source>What it is</source>
<translation>Was es ist</translation>
</message>
<message>
<source>± holds 95 % of what the inputs leave open.</source>
<translation>± enthält 95 % dessen, was die Eingaben offen lassen.</translation>
</message>
<message>
<source>Surface</source>
<translation>Fläche</translation>
</message>
<message>
<source>Share</source>
<translation>Anteil</translation>
</message>
<message>
<source>Where the photons went</source>
<translation>Wohin die Photonen gingen</translation>
</message>
<message>
<source>Measured against '{name}'.</source>
<translation>Verglichen mit „{name}“.</translation>
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>of_base</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>inside_all</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The light they give</source>
<translation>Das Licht, das sie geben</translation>
</message>
<message>
<source>What they take</source>
<translation>Was sie brauchen</translation>
</message>
<message>
<source>Option</source>
<translation>Variante</translation>
</message>
<message>
<source>This plan</source>
<translation>Dieser Plan</translation>
</message>
<message>
<source>'{name}'</source>
<translation>„{name}“</translation>
</message>
<message>
<source> To buy: {buy}.</source>
<translation> Zu kaufen: {buy}.</translation>
</message>
<message>
<source> {capital}.</source>
<translation> {capital}.</translation>
</message>
<message>
<source>{name}: {value}.{beyond}{buy}</source>
<translation>{name}: {value}.{beyond}{buy}</translation>
</message>
<message>
<source>as the plan</source>
<translation>wie der Plan</translation>
</message>
<message>
<source>total</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value} ± {band}</source>
<translation>{value} ± {band}</translation>
</message>
<message>
<source>, on the canopy {by_tape} above the floor</source>
<translation>, auf dem Blätterdach {by_tape} über dem Boden</translation>
</message>
<message>
<source>'{name}'{date}, {name2}{where}: mean {mean} {PPFD_UNIT} over {len} of {len2} holes, from {ppfd} to {ppfd2}.</source>
<translation>„{name}“{date}, {name2}{where}: Mittel {mean} {PPFD_UNIT} über {len} von {len2} Löchern, von {ppfd} bis {ppfd2}.</translation>
</message>
<message>
<source>Its conditions fit the plan no more, so no estimate stands beside.</source>
<translation>Ihre Bedingungen passen nicht mehr zum Plan, also steht keine Schätzung daneben.</translation>
</message>
<message>
<source>Hole</source>
<translation>Loch</translation>
</message>
<message>
<source>Read</source>
<translation>Gemessen</translation>
</message>
<message>
<source>Estimated</source>
<translation>Geschätzt</translation>
</message>
<message>
<source>Explained by the meter: ±</source>
<translation>Vom Messgerät erklärt: ±</translation>
</message>
<message>
<source>In {PPFD_UNIT}</source>
<translation>In {PPFD_UNIT}</translation>
</message>
<message>
<source>{less} more would give less than 1 % of the first each. </source>
<translation>{less} weitere ergäben je weniger als 1 % der ersten. </translation>
</message>
<message>
<source>The mean is {value} ± {half} {PPFD_UNIT} (95 %). Each input by itself would give this much of it; their squares add up.</source>
<translation>Das Mittel ist {value} ± {half} {PPFD_UNIT} (95 %). Jede Eingabe für sich allein gäbe so viel davon; ihre Quadrate addieren sich.</translation>
</message>
<message>
<source>{rest}{LEFT_OUT}</source>
<translation>{rest}{LEFT_OUT}</translation>
</message>
<message>
<source>Calibrated from the surveys:</source>
<translation>Abgeglichen aus den Messungen:</translation>
</message>
<message>
<source>stage</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>span</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>In all {sums}.</source>
<translation>Insgesamt {sums}.</translation>
</message>
<message>
<source>a quick preview</source>
<translation>schnelle Vorschau</translation>
</message>
<message>
<source>the usual quality</source>
<translation>Standardqualität</translation>
</message>
<message>
<source>the finest quality</source>
<translation>feinste Qualität</translation>
</message>
<message>
<source>The canopy is a closed layer of leaves that reflects {percent}.</source>
<translation>Das Blätterdach ist eine geschlossene Blattschicht, die {percent} zurückwirft.</translation>
</message>
<message>
<source>The canopy is only a level: light passes it and comes back from the floor.</source>
<translation>Das Blätterdach ist nur eine Ebene: Licht geht hindurch und kommt vom Boden zurück.</translation>
</message>
<message>
<source>{as_old}; power is proportional to output.</source>
<translation>{as_old}; die Leistung folgt der Dimmung im gleichen Verhältnis.</translation>
</message>
<message>
<source>Its leaves return each colour in a measure of its own.</source>
<translation>Seine Blätter geben jede Farbe in eigenem Maß zurück.</translation>
</message>
<message>
<source>The room sends {ppfd} {PPFD_UNIT} in at the open door, evenly from every direction, {format_number} h a day: {ppfd2} of the mean.</source>
<translation>Das Zimmer schickt {ppfd} {PPFD_UNIT} durch die offene Tür, aus jeder Richtung gleich viel, {format_number} h am Tag: {ppfd2} des Mittels.</translation>
</message>
<message>
<source>Target: {source}</source>
<translation>Ziel: {source}</translation>
</message>
<message>
<source>Computed in {nx} by {ny} cells at {_QUALITY}, seed {seed}.</source>
<translation>Berechnet in {nx} × {ny} Zellen, {_QUALITY}, Seed {seed}.</translation>
</message>
<message>
<source>decision</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>colours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>figures</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>options</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>budget</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>schedule</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>assumptions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cautions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.reports.charts</name>
<message>
<source>#b3501a</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#2f63b0</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{level}</source>
<translation>{level}</translation>
</message>
<message>
<source>end</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>start</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Light against cost of {len} options; beaten by none: {named}</source>
<translation>Licht gegen Kosten von {len} Varianten; von keiner geschlagen: {named}</translation>
</message>
<message>
<source>Filled: the plan. The line joins the options that no other beats in both at once.</source>
<translation>Gefüllt: der Plan. Die Linie verbindet die Varianten, die keine andere in beidem zugleich schlägt.</translation>
</message>
<message>
<source>± {half}</source>
<translation>± {half}</translation>
</message>
<message>
<source>Half-widths (95 %) in {unit} that single inputs alone would give: </source>
<translation>Halbbreiten (95 %) in {unit}, die einzelne Eingaben allein ergäben: </translation>
</message>
<message>
<source>{name} ± {banded}</source>
<translation>{name} ± {banded}</translation>
</message>
<message>
<source>{value}</source>
<translation>{value}</translation>
</message>
<message>
<source>Readings against the estimate at {len} holes</source>
<translation>Messwerte gegen die Schätzung an {len} Löchern</translation>
</message>
<message>
<source>Per cent by which a reading lies over or under the estimate; filled rings: more than the meter's own uncertainty explains.</source>
<translation>Prozent, um die ein Messwert über oder unter der Schätzung liegt; gefüllte Ringe: mehr, als die Unsicherheit des Messgeräts erklärt.</translation>
</message>
<message>
<source>n</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{ppfd} µmol</source>
<translation>{ppfd} µmol</translation>
</message>
<message>
<source>{week}</source>
<translation>{week}</translation>
</message>
<message>
<source>Weeks</source>
<translation>Wochen</translation>
</message>
<message>
<source>Height ({value})</source>
<translation>Höhe ({value})</translation>
</message>
<message>
<source>Canopy and lamp over {weeks} weeks</source>
<translation>Blätterdach und Lampe über {weeks} Wochen</translation>
</message>
<message>
<source>Green: the canopy. Blue: the lamps' face. Over it: the ceiling.</source>
<translation>Grün: das Blätterdach. Blau: die Lichtfläche der Lampen. Darüber: die Decke.</translation>
</message>
<message>
<source>light from {ppfd} to {ppfd2}</source>
<translation>Licht von {ppfd} bis {ppfd2}</translation>
</message>
<message>
<source> over {len} canopies</source>
<translation> über {len} Blätterdächer</translation>
</message>
<message>
<source>{value}: {said}</source>
<translation>{value}: {said}</translation>
</message>
<message>
<source>#ffffff</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>maximum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cv</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>utilisation</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>efficacy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>watts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{name}: {map_name} from {least} to {most} {map_unit}</source>
<translation>{name}: {map_name} von {least} bis {most} {map_unit}</translation>
</message>
<message>
<source>Colours from 0 to {top} {PPFD_UNIT}</source>
<translation>Farben von 0 bis {top} {PPFD_UNIT}</translation>
</message>
<message>
<source>{map_name}, {map_unit}</source>
<translation>{map_name}, {map_unit}</translation>
</message>
<message>
<source>#{red}{green}{blue}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&gt;I</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&gt;IIBBBBB</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.reports.content</name>
<message>
<source>No lamp hangs in this space yet, so it is dark.</source>
<translation>In diesem Raum hängt noch keine Lampe, also ist er dunkel.</translation>
</message>
<message>
<source>All lamps are turned down to nothing, so the space is dark.</source>
<translation>Alle Lampen sind ganz heruntergeregelt, also ist der Raum dunkel.</translation>
</message>
<message>
<source>{whose}: {inside}</source>
<translation>{whose}: {inside}</translation>
</message>
<message>
<source>{of_room} h of room light give {dli} mol a day</source>
<translation>{of_room} h Zimmerlicht geben {dli} mol am Tag</translation>
</message>
<message>
<source>{lamps} h of lamps and {of_room} h of room light give {dli} mol a day</source>
<translation>{lamps} h Lampenlicht und {of_room} h Zimmerlicht geben {dli} mol am Tag</translation>
</message>
<message>
<source>{format_number} h give {dli} mol a day</source>
<translation>{format_number} h geben {dli} mol am Tag</translation>
</message>
<message>
<source>with a photoperiod of 0 h no light reaches the canopy in a day</source>
<translation>bei einer Beleuchtungsdauer von 0 h erreicht am Tag kein Licht das Blätterdach</translation>
</message>
<message>
<source>Mean {shown}</source>
<translation>Mittel {shown}</translation>
</message>
<message>
<source>, {_lowest_place} {shown} % of it</source>
<translation>, {_lowest_place} {shown} % davon</translation>
</message>
<message>
<source>lowest corner</source>
<translation>dunkelste Ecke</translation>
</message>
<message>
<source> for {_crop_in_words}</source>
<translation> für {_crop_in_words}</translation>
</message>
<message>
<source> that is wanted</source>
<translation> des Plans</translation>
</message>
<message>
<source>all of the canopy lies inside the band{crop}</source>
<translation>das ganze Blätterdach liegt im Zielbereich{crop}</translation>
</message>
<message>
<source>all of the canopy lies under the band{crop}</source>
<translation>das ganze Blätterdach liegt unter dem Zielbereich{crop}</translation>
</message>
<message>
<source>all of the canopy lies over the band{crop}</source>
<translation>das ganze Blätterdach liegt über dem Zielbereich{crop}</translation>
</message>
<message>
<source>{percent} of the canopy lies inside the band{crop}{rest}</source>
<translation>{percent} des Blätterdachs liegen im Zielbereich{crop}{rest}</translation>
</message>
<message>
<source>{inside} ({stage})</source>
<translation>{inside} ({stage})</translation>
</message>
<message>
<source>, the rest under it</source>
<translation>, der Rest darunter</translation>
</message>
<message>
<source>, the rest over it</source>
<translation>, der Rest darüber</translation>
</message>
<message>
<source>, {percent} under it and {percent2} over it</source>
<translation>, {percent} darunter und {percent2} darüber</translation>
</message>
<message>
<source>{format_number} to {format_number2} {unit}</source>
<translation>{format_number} bis {format_number2} {unit}</translation>
</message>
<message>
<source>Wanted: {band_in_words}</source>
<translation>Gewünscht: {band_in_words}</translation>
</message>
<message>
<source>, which is {ppfd} to {ppfd2} {PPFD_UNIT} over </source>
<translation>, das sind {ppfd} bis {ppfd2} {PPFD_UNIT} über </translation>
</message>
<message>
<source>{format_number} h</source>
<translation>{format_number} h</translation>
</message>
<message>
<source> with {format_number} h of room light</source>
<translation> bei {format_number} h Licht aus dem Raum</translation>
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>± {half}</source>
<translation>± {half}</translation>
</message>
<message>
<source>The options are judged by different canopies: each one's figures are those of its own choice.</source>
<translation>Die Varianten werden nach verschiedenen Blätterdächern beurteilt: Die Kennzahlen jeder Variante gelten dem, das sie selbst gewählt hat.</translation>
</message>
<message>
<source>All canopies together</source>
<translation>Alle Blätterdächer zusammen</translation>
</message>
<message>
<source>Figures are those of {inside}, by which the plan is judged.</source>
<translation>Die Kennzahlen gelten dem Blätterdach, nach dem der Plan beurteilt wird: {inside}.</translation>
</message>
<message>
<source>{name} (the plan is judged by it)</source>
<translation>{name} (danach wird der Plan beurteilt)</translation>
</message>
<message>
<source>{inside} gives {percent} of new</source>
<translation>{inside} gibt noch {percent}</translation>
</message>
<message>
<source>{inside} returns {percent} of clean</source>
<translation>{inside} wirft noch {percent} des Sauberen zurück</translation>
</message>
<message>
<source>Linings are as dirty and lamps as old and dusty as entered</source>
<translation>Auskleidungen sind so schmutzig und Lampen so alt und staubig wie angegeben</translation>
</message>
<message>
<source>Linings are clean and lamps shine as stated</source>
<translation>Auskleidungen sind sauber, und Lampen strahlen wie angegeben</translation>
</message>
<message>
<source>No photons are emitted, so there is no balance to strike.</source>
<translation>Es werden keine Photonen ausgesandt, also gibt es keine Bilanz zu ziehen.</translation>
</message>
<message>
<source>Photon balance: absorbed and escaped light differ from what is emitted by less than {value} %.</source>
<translation>Photonenbilanz: Absorbiertes und entwichenes Licht weichen vom ausgesandten um weniger als {value} % ab.</translation>
</message>
<message>
<source>Photon balance: absorbed and escaped light differ from what is emitted by {value} %.</source>
<translation>Photonenbilanz: Absorbiertes und entwichenes Licht weichen vom ausgesandten ab um {value} %.</translation>
</message>
<message>
<source>by -</source>
<translation>um -</translation>
</message>
<message>
<source>by {MINUS}</source>
<translation>um {MINUS}</translation>
</message>
<message>
<source>The sums themselves are good to about {percent} in each cell of the map.</source>
<translation>Die Summen selbst stimmen in jeder Zelle der Karte auf etwa {percent}.</translation>
</message>
<message>
<source>more</source>
<translation>mehr</translation>
</message>
<message>
<source>less</source>
<translation>weniger</translation>
</message>
<message>
<source>Photons counted by independent means disagree: the map holds {percent} {side} light than they bring (their chance: {percent2}). Do not rely on it to better than that.</source>
<translation>Unabhängig gezählte Photonen widersprechen: Die Karte enthält {percent} {side} Licht, als sie ergeben (ihr Zufall: {percent2}). Genauer als das ist sie nicht zu nehmen.</translation>
</message>
<message>
<source>Photons counted by independent means agree with the mean of the map (to {percent}, within their chance).</source>
<translation>Unabhängig gezählte Photonen stimmen mit dem Mittel der Karte überein (auf {percent}, im Rahmen ihres Zufalls).</translation>
</message>
<message>
<source>{label} (± {_two_digits})</source>
<translation>{label} (± {_two_digits})</translation>
</message>
<message>
<source>{more} smaller one{value}</source>
<translation>{more} kleinere Ursache{value}</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source> The ± covers 95 % of what the inputs leave open: {join}; their squares add up. {LEFT_OUT}</source>
<translation> Das ± deckt 95 % dessen ab, was die Eingaben offen lassen: {join}; ihre Quadrate addieren sich. {LEFT_OUT}</translation>
</message>
</context>
<context>
<name>planner.reports.contrast</name>
<message>
<source>00204d 00265a 002c69 00306f 06366e 1f3c6d 2d426c 38486b 414d6b 4a536b 52596c 595f6d 61646f 686a71 6f7073 767676 7d7c78 848179 8b8779 938e78 9b9477 a39a76 aca174 b4a872 bcaf6f c5b56c cebc68 d7c463 e0cb5e e9d358 f2da50 fbe248 ffea46</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.reports.drawings</name>
<message>
<source>#1c2026</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#b9bec6</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#1f6fb4</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#5f9e4a</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ink</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>grey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>pale</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>blue</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&lt;svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}" role="img" font-family="'DejaVu Sans', 'Noto Sans', 'Segoe UI', Arial, sans-serif"&gt;&lt;title&gt;{plain}&lt;/title&gt;{join}&lt;/svg&gt;</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>middle</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> transform="rotate({angle} {x} {y})"</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> font-weight="bold"</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&lt;text x="{x}" y="{value}" font-size="{size}" letter-spacing="0.001" text-anchor="{anchor}" fill="{colour}"{_class}{weight}{turn}&gt;{plain}&lt;/text&gt;</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{x},{y}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>polygon</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>polyline</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> stroke-dasharray="{dash}"</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> stroke-linecap="round"</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&lt;{kind} points="{at}" fill="{fill}" stroke="{colour}" stroke-width="{width}" stroke-linejoin="round"{dashes}{_class}/&gt;</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>line</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> fill-opacity="{opacity}"</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> stroke="{colour}" stroke-width="0.25"</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&lt;rect x="{x}" y="{y}" width="{width}" height="{height}" fill="{fill}"{clear}{rim}{_class}/&gt;</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&lt;circle cx="{x}" cy="{y}" r="{radius}" fill="{fill}" stroke="{colour}" stroke-width="0.25"{_class}/&gt;</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&lt;image x="{x}" y="{y}" width="{width}" height="{height}" preserveAspectRatio="none" xlink:href="data:image/png;base64,{data}"/&gt;</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>&lt;g transform="translate({x} {y})"&gt;{join}&lt;/g&gt;</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> class="{value}-{known}"</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fill</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#e3e5e8</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lamp {number}</source>
<translation>Lampe {number}</translation>
</message>
<message>
<source>start</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{by_tape} by {by_tape2}</source>
<translation>{by_tape} × {by_tape2}</translation>
</message>
<message>
<source>From above, 1 : {part} where it is printed at its size.</source>
<translation>Von oben, 1 : {part}, wenn in wahrer Größe gedruckt.</translation>
</message>
<message>
<source>The space from above, {size}, with its walls and lamps</source>
<translation>Der Raum von oben, {size}, mit seinen Wänden und Lampen</translation>
</message>
<message>
<source>Lamp 1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{shortened}, {by_tape}</source>
<translation>{shortened}, {by_tape}</translation>
</message>
<message>
<source>#ffffff</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#1c2027</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value}</source>
<translation>{value}</translation>
</message>
<message>
<source>{number}: {by_tape}</source>
<translation>{number}: {by_tape}</translation>
</message>
<message>
<source>, door</source>
<translation>, Tür</translation>
</message>
<message>
<source> (open)</source>
<translation> (offen)</translation>
</message>
<message>
<source>#{grey}{grey}{grey}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>end</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The space from its near side: {by_tape} high, the canopy at {by_tape2}</source>
<translation>Der Raum von seiner nahen Seite: {by_tape} hoch, das Blätterdach auf {by_tape2}</translation>
</message>
<message>
<source>From the near side, 1 : {part} where it is printed at its size.</source>
<translation>Von der nahen Seite, 1 : {part}, wenn in wahrer Größe gedruckt.</translation>
</message>
<message>
<source>Lamp{value} {join}</source>
<translation>Lampe{value} {join}</translation>
</message>
<message>
<source>s</source>
<translation>:</translation>
</message>
<message>
<source> (band {value})</source>
<translation> (Streifen {value})</translation>
</message>
<message>
<source>walls</source>
<translation>Wände</translation>
</message>
<message>
<source>obstacles</source>
<translation>Hindernisse</translation>
</message>
<message>
<source>{name} {join}</source>
<translation>{name} {join}</translation>
</message>
</context>
<context>
<name>planner.reports.exports</name>
<message>
<source>x_m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y_m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ppfd_umol_m2_s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cell_area_m2</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>at_centre</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>standard_error_umol_m2_s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{text}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{band}_umol_m2_s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{float}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{cell_area}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_under</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_over</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>h</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>W</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_h</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>judged_by</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>all</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>out_of_band</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>problem</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>_{tag}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Name</source>
<translation>Name</translation>
</message>
<message>
<source>Differs in</source>
<translation>Unterschied</translation>
</message>
<message>
<source>Judged by</source>
<translation>Beurteilt nach</translation>
</message>
<message>
<source>Out of their bands</source>
<translation>Außerhalb ihrer Zielbereiche</translation>
</message>
<message>
<source>What to buy</source>
<translation>Zu kaufen</translation>
</message>
<message>
<source>Problems</source>
<translation>Probleme</translation>
</message>
<message>
<source>format</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>program</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>plan_name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>quality</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>seed</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cells</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>seconds</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>units</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>map</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>target</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photoperiod_hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>figures</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopies</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>overall</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shares</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wavebands</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>walls</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>closure</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cross_check</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>numeric_error</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>recount</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>version</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Grow space light planner</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ppfd</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>standard_error</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ratios and shares</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>m²</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>order</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>row-major: ppfd[row][column], rows by rising y, columns by rising x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>label</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kind</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photon_flux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>index</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>band</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>opening</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>place</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>height_m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ppfd_band</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>json</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.reports.leaves</name>
<message>
<source>{value} / {len}</source>
<translation>{value} / {len}</translation>
</message>
<message>
<source>{title}.</source>
<translation>{title}.</translation>
</message>
<message>
<source>{title} {sentence}</source>
<translation>{title} {sentence}</translation>
</message>
</context>
<context>
<name>planner.reports.page</name>
<message>
<source>report/report.html.j2</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Sections</source>
<translation>Abschnitte</translation>
</message>
<message>
<source>utf-8</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.reports.paper</name>
<message>
<source>white</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.reports.report</name>
<message>
<source>decision</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>plan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>colours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>figures</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>options</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>survey</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>budget</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>schedule</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>build</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>assumptions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cautions</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Decision</source>
<translation>Entscheidung</translation>
</message>
<message>
<source>The plan</source>
<translation>Der Plan</translation>
</message>
<message>
<source>The light</source>
<translation>Das Licht</translation>
</message>
<message>
<source>Colours of the light</source>
<translation>Farben des Lichts</translation>
</message>
<message>
<source>Figures</source>
<translation>Kennzahlen</translation>
</message>
<message>
<source>Options</source>
<translation>Varianten</translation>
</message>
<message>
<source>Survey</source>
<translation>Messung</translation>
</message>
<message>
<source>Where the doubt comes from</source>
<translation>Woher die Unsicherheit kommt</translation>
</message>
<message>
<source>Schedule</source>
<translation>Zeitplan</translation>
</message>
<message>
<source>Build sheet</source>
<translation>Bauzettel</translation>
</message>
<message>
<source>Assumptions</source>
<translation>Annahmen</translation>
</message>
<message>
<source>Cautions</source>
<translation>Warnhinweise</translation>
</message>
<message>
<source>There is no section '{name}'; a report has {join}.</source>
<translation>Es gibt keinen Abschnitt „{name}“; ein Bericht hat {join}.</translation>
</message>
<message>
<source>Name at least one section of {join}.</source>
<translation>Mindestens einen Abschnitt nennen: {join}.</translation>
</message>
<message>
<source>walls of {listed}</source>
<translation>Wände aus {listed}</translation>
</message>
<message>
<source>no walls</source>
<translation>keine Wände</translation>
</message>
<message>
<source>{heights} to {heights2}</source>
<translation>{heights} bis {heights2}</translation>
</message>
<message>
<source>, hung {listed} {above}</source>
<translation>, {listed} {above}</translation>
</message>
<message>
<source>Chosen: {_lamps_in_words}{hung}; {lined}; {hours} h of light a day.</source>
<translation>Gewählt: {_lamps_in_words}{hung}; {lined}; {hours} h Licht am Tag.</translation>
</message>
<message>
<source>no lamp</source>
<translation>keine Lampe</translation>
</message>
<message>
<source>{count} × {name}</source>
<translation>{count} × {name}</translation>
</message>
<message>
<source>It stands alone: no other option was kept beside it.</source>
<translation>Er steht allein: Keine andere Variante wurde daneben behalten.</translation>
</message>
<message>
<source>'{name}'</source>
<translation>„{name}“</translation>
</message>
<message>
<source>{value} more</source>
<translation>{value} weitere</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>{len} other option{plural}</source>
<translation>{len} andere Variante{plural}</translation>
</message>
<message>
<source>{capital} kept beside it, not weighed here: {listed}.</source>
<translation>{capital} daneben behalten, hier nicht abgewogen: {listed}.</translation>
</message>
<message>
<source>It was weighed against {options}: {listed}.</source>
<translation>Abgewogen gegen {options}: {listed}.</translation>
</message>
<message>
<source>This plan</source>
<translation>Dieser Plan</translation>
</message>
<message>
<source>It is dark, so nothing can be said of its light.</source>
<translation>Er ist dunkel, also lässt sich über sein Licht nichts sagen.</translation>
</message>
<message>
<source>How sure its mean of {ppfd} is, was not reckoned.</source>
<translation>Wie sicher sein Mittel von {ppfd} ist, wurde nicht berechnet.</translation>
</message>
<message>
<source>Its mean is {value} ± {half} {PPFD_UNIT} with 95 % probability, by what its inputs leave open; a survey would narrow that.</source>
<translation>Sein Mittel ist {value} ± {half} {PPFD_UNIT} mit 95 % Wahrscheinlichkeit, nach dem, was seine Eingaben offen lassen; eine Messung würde das einengen.</translation>
</message>
</context>
<context>
<name>planner.reports.sheet</name>
<message>
<source>DejaVu Sans</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Noto Sans</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Segoe UI</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Helvetica Neue</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Arial</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>QT_QPA_PLATFORM</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>offscreen</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>planner</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Grow space light planner</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Date</source>
<translation>Datum</translation>
</message>
<message>
<source>Meter and its number</source>
<translation>Messgerät, Nummer</translation>
</message>
<message>
<source>Lamp output, %</source>
<translation>Dimmung der Lampen, %</translation>
</message>
<message>
<source>height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>Warm-up, minutes</source>
<translation>Warmlaufen, Minuten</translation>
</message>
<message>
<source>Sensor height above board</source>
<translation>Sensor über Lochbrett</translation>
</message>
<message>
<source>Board made of</source>
<translation>Lochbrett aus</translation>
</message>
<message>
<source>Door shut?</source>
<translation>Tür geschlossen?</translation>
</message>
<message>
<source>Begun at</source>
<translation>Beginn</translation>
</message>
<message>
<source>Ended at</source>
<translation>Ende</translation>
</message>
<message>
<source>Readings: {title}</source>
<translation>Messwerte: {title}</translation>
</message>
<message>
<source>hole</source>
<translation>Loch</translation>
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>time</source>
<translation>Zeit</translation>
</message>
<message>
<source>reading</source>
<translation>Messwert</translation>
</message>
<message>
<source>again</source>
<translation>noch einmal</translation>
</message>
<message>
<source>week</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Week</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>stage</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Stage</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Canopy at</source>
<translation>Blätterdach auf</translation>
</message>
<message>
<source>Raise to</source>
<translation>Heben auf</translation>
</message>
<message>
<source>face</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>From floor</source>
<translation>Über Boden</translation>
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Dim to</source>
<translation>Dimmen</translation>
</message>
<message>
<source>photoperiod</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Light</source>
<translation>Licht</translation>
</message>
<message>
<source>kwh</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>kWh</source>
<translation>kWh</translation>
</message>
<message>
<source>Done</source>
<translation>Fertig</translation>
</message>
<message>
<source>Raise to: from the lamp's lit face down to the tops of the plants. From floor: the lit face above the floor, once the canopy is as high as said.</source>
<translation>Heben auf: von der Lichtfläche der Lampe bis zu den Pflanzenspitzen. Über Boden: die Lichtfläche über dem Boden, sobald das Blätterdach so hoch ist wie angegeben.</translation>
</message>
<message>
<source>Week by week: {name}</source>
<translation>Woche für Woche: {name}</translation>
</message>
<message>
<source>{text}…</source>
<translation>{text}…</translation>
</message>
</context>
<context>
<name>planner.reports.stands</name>
<message>
<source>From wall {value}</source>
<translation>Von Wand {value}</translation>
</message>
<message>
<source>, door</source>
<translation>, Tür</translation>
</message>
<message>
<source>{name} ({side_of} side{door})</source>
<translation>{name} ({side_of} Seite{door})</translation>
</message>
<message>
<source>What stands in the space</source>
<translation>Was im Raum steht</translation>
</message>
<message>
<source>No.</source>
<translation>Nr.</translation>
</message>
<message>
<source>Name</source>
<translation>Name</translation>
</message>
<message>
<source>Size ({u})</source>
<translation>Größe ({u})</translation>
</message>
<message>
<source>Underside at</source>
<translation>Unterseite</translation>
</message>
<message>
<source>Top at</source>
<translation>Oberseite</translation>
</message>
<message>
<source>, turned by {rotation_deg}°</source>
<translation>, um {rotation_deg}° gedreht</translation>
</message>
<message>
<source>{name}{turned}</source>
<translation>{name}{turned}</translation>
</message>
<message>
<source>{STANDS}: its nearest edges from two walls, its heights from the floor</source>
<translation>{STANDS}: nächste Kanten ab zwei Wänden, Höhen ab dem Boden</translation>
</message>
<message>
<source>{STANDS}: nearest edges from {first} and {second}, heights from the floor, in {u}</source>
<translation>{STANDS}: nächste Kanten ab {first} und {second}, Höhen ab dem Boden, in {u}</translation>
</message>
<message>
<source>Lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>On its top</source>
<translation>Darauf</translation>
</message>
<message>
<source>nothing</source>
<translation>nichts</translation>
</message>
<message>
<source>a canopy that reflects {percent}</source>
<translation>ein Blätterdach, das {percent} zurückwirft</translation>
</message>
<message>
<source>{said}; wanted: {wanted_band}</source>
<translation>{said}; gewünscht: {wanted_band}</translation>
</message>
<message>
<source> (its top is at {by_tape})</source>
<translation> (Oberseite bei {by_tape})</translation>
</message>
<message>
<source>{listed} where '{name}' stands{top}</source>
<translation>{listed}, wo „{name}“ steht{top}</translation>
</message>
<message>
<source>Left out are holes {join}.</source>
<translation>Ausgelassen sind die Löcher {join}.</translation>
</message>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>minimum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>maximum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min_over_mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dli</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>share_inside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Every canopy, by its own target: light in {PPFD_UNIT}, DLI in {DLI_UNIT}, shares in %, area in m²</source>
<translation>Jedes Blätterdach, nach seinem eigenen Ziel: Licht in {PPFD_UNIT}, DLI in {DLI_UNIT}, Anteile in %, Fläche in m²</translation>
</message>
<message>
<source>{text} ± {half}</source>
<translation>{text} ± {half}</translation>
</message>
<message>
<source>Canopy</source>
<translation>Blätterdach</translation>
</message>
<message>
<source>Stage</source>
<translation>Stadium</translation>
</message>
<message>
<source>canopy_area</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.survey.comparison</name>
<message>
<source>mean</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>max</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>above</source>
<translation>über</translation>
</message>
<message>
<source>below</source>
<translation>unter</translation>
</message>
<message>
<source>, at 95 % for all {among} surveys together</source>
<translation>, mit 95 % für alle {among} Messungen zusammen</translation>
</message>
<message>
<source>the meter's gain drops out</source>
<translation>der Kalibrierfaktor des Messgeräts fällt heraus</translation>
</message>
<message>
<source>two meters were used, so their gains do not drop out</source>
<translation>zwei Messgeräte wurden benutzt, ihre Kalibrierfaktoren fallen also nicht heraus</translation>
</message>
<message>
<source>'{first}' reads {percent} % {way} '{second}', ± {band} % over {holes} holes ({common}; setting up anew alone makes ± {anew} %{together}).</source>
<translation>„{first}“ liegt {percent} % {way} „{second}“, ± {band} % bei {holes} Löchern ({common}; neues Aufbauen allein macht ± {anew} %{together}).</translation>
</message>
<message>
<source>{figures} The difference is larger than what the readings can resolve.</source>
<translation>{figures} Der Unterschied ist größer als das, was die Messwerte gerade noch auflösen.</translation>
</message>
<message>
<source>{figures} The readings cannot tell the two apart.</source>
<translation>{figures} Die Messwerte können die beiden nicht unterscheiden.</translation>
</message>
<message>
<source>'{name}'</source>
<translation>„{name}“</translation>
</message>
<message>
<source>{listed} cannot be told apart.</source>
<translation>{listed} sind nicht unterscheidbar.</translation>
</message>
<message>
<source>All of them can be told apart.</source>
<translation>Alle sind unterscheidbar.</translation>
</message>
<message>
<source>{names} is brighter than all the others.</source>
<translation>{names} ist heller als alle anderen.</translation>
</message>
<message>
<source>{listed}: no hole in common with the others.</source>
<translation>{listed}: kein gemeinsames Loch mit den anderen.</translation>
</message>
<message>
<source>{value} %</source>
<translation>{value} %</translation>
</message>
<message>
<source>Setting up anew scatters by {size} at least: so far off were holes read again.</source>
<translation>Neues Aufbauen streut um mindestens {size}: So weit wichen neu gemessene Löcher ab.</translation>
</message>
<message>
<source>That setting up anew scatters by {size} is taken from what the surveys state; a survey repeated from the start would measure it.</source>
<translation>Dass neues Aufbauen um {size} streut, folgt aus den Angaben der Messungen; eine von Anfang an wiederholte Messung würde es messen.</translation>
</message>
<message>
<source>Setting up anew scatters by {size}, as repeated surveys show.</source>
<translation>Neues Aufbauen streut um {size}, wie wiederholte Messungen zeigen.</translation>
</message>
<message>
<source>a ranking is by mean, min or max, not by '{by}'.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the base of a ranking must be a survey with light in its readings.</source>
<translation>die Basis einer Rangfolge muss eine Messung mit Licht in ihren Messwerten sein.</translation>
</message>
<message>
<source>output</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hanging height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>board</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sensor height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>door</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{name}' {_told}</source>
<translation>„{name}“ {_told}</translation>
</message>
<message>
<source>The {word} was not the same: {listed}. That counts too.</source>
<translation>{word}: war nicht gleich: {listed}. Auch das zählt.</translation>
</message>
<message>
<source>as in the plan</source>
<translation>wie im Plan</translation>
</message>
<message>
<source>perhaps {value} % open</source>
<translation>vielleicht {value} % offen</translation>
</message>
<message>
<source>shut</source>
<translation>geschlossen</translation>
</message>
<message>
<source>{value} cm</source>
<translation>{value} cm</translation>
</message>
</context>
<context>
<name>planner.survey.layout</name>
<message>
<source>a margin of {value} cm on both sides leaves nothing of {value2} cm; choose one below {value3} cm.</source>
<translation>ein Rand von {value} cm auf beiden Seiten lässt von {value2} cm nichts übrig; einen unter {value3} cm wählen.</translation>
</message>
<message>
<source>no hole of this grid lies inside the space; use more rows and columns.</source>
<translation>kein Loch dieses Rasters liegt im Raum; mehr Reihen und Spalten nehmen.</translation>
</message>
<message>
<source>the margin leaves nothing of the space; choose a smaller one.</source>
<translation>der Rand lässt vom Raum nichts übrig; einen kleineren wählen.</translation>
</message>
<message>
<source>Survey {value}</source>
<translation>Messung {value}</translation>
</message>
<message>
<source>{stem}, again</source>
<translation>{stem}, noch einmal</translation>
</message>
<message>
<source>hole {lost} has</source>
<translation>Loch {lost} hat</translation>
</message>
<message>
<source>{len} holes have</source>
<translation>{len} Löcher haben</translation>
</message>
<message>
<source>{which} readings and would be gone from this grid; copy the survey to another board, or take the readings out first.</source>
<translation>{which} Messwerte, für die dieses Raster keinen Platz hat; die Messung auf ein anderes Lochbrett kopieren oder zuerst die Messwerte herausnehmen.</translation>
</message>
<message>
<source>hole</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>this survey was not laid out as a grid; its holes came with a table.</source>
<translation>diese Messung wurde nicht als Raster angelegt; ihre Löcher kamen mit einer Tabelle.</translation>
</message>
<message>
<source>excluded</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.survey.outliers</name>
<message>
<source>stable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.survey.statistics</name>
<message>
<source>From the first reading to the last the light changed by {size} % ± {band} %</source>
<translation>Vom ersten bis zum letzten Messwert änderte sich das Licht um {size} % ± {band} %</translation>
</message>
<message>
<source>{said}: no drift to be seen.</source>
<translation>{said}: keine Drift zu sehen.</translation>
</message>
<message>
<source>{said}; a calibration takes that off.</source>
<translation>{said}; ein Abgleich zieht das ab.</translation>
</message>
<message>
<source>readings</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hole</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>aside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>stable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The estimate is dark at these holes, so nothing can be set against it: hang a lamp, or turn its output up.</source>
<translation>Die Schätzung ist an diesen Löchern dunkel, also lässt sich nichts dagegenhalten: eine Lampe aufhängen oder heller stellen.</translation>
</message>
<message>
<source>hole {holes}, {measured} ({estimated} estimated)</source>
<translation>Loch {holes}, {measured} ({estimated} geschätzt)</translation>
</message>
<message>
<source>{value} more</source>
<translation>{value} weitere</translation>
</message>
<message>
<source>The reading at {named}, is far from its neighbours and from the estimate: read it again. The rest is told without it.</source>
<translation>Der Messwert an {named}, liegt weit von seinen Nachbarn und von der Schätzung: noch einmal ablesen. Das Übrige ist ohne ihn gesagt.</translation>
</message>
<message>
<source>The readings at {listed} are far from their neighbours and from the estimate: read them again. The rest is told without them.</source>
<translation>Die Messwerte an {listed} liegen weit von ihren Nachbarn und von der Schätzung: noch einmal ablesen. Das Übrige ist ohne sie gesagt.</translation>
</message>
<message>
<source>above</source>
<translation>über</translation>
</message>
<message>
<source>below</source>
<translation>unter</translation>
</message>
<message>
<source>On the mean the readings lie {percent} % {way} the estimate</source>
<translation>Im Mittel liegen die Messwerte {percent} % {way} der Schätzung</translation>
</message>
<message>
<source>{said}, which the meter's calibration alone could explain.</source>
<translation>{said}, was die Kalibrierung des Messgeräts allein erklären könnte.</translation>
</message>
<message>
<source>{said}: more than the calibration explains, but good agreement (within 10 %).</source>
<translation>{said}: mehr, als die Kalibrierung erklärt, aber gute Übereinstimmung (innerhalb von 10 %).</translation>
</message>
<message>
<source>{said}: more than a meter usually errs. Look at the lamp's photon flux, the linings and the hanging height first.</source>
<translation>{said}: mehr, als ein Messgerät üblicherweise abweicht. Zuerst Photonenfluss der Lampe, Auskleidungen und Hängehöhe prüfen.</translation>
</message>
<message>
<source>Apart from that common factor they scatter by {percent} % (rms)</source>
<translation>Abgesehen von diesem gemeinsamen Faktor streuen sie um {percent} % (rms)</translation>
</message>
<message>
<source>{said}: the shape of the light is right.</source>
<translation>{said}: Die Form des Lichts stimmt.</translation>
</message>
<message>
<source>{said}: the shape of the light is about right.</source>
<translation>{said}: Die Form des Lichts stimmt ungefähr.</translation>
</message>
<message>
<source>{said}: the shape of the light differs. Look at the lamp's profile and place, and at the map of residuals.</source>
<translation>{said}: Die Form des Lichts weicht ab. Profil und Platz der Lampe und die Karte der Abweichungen ansehen.</translation>
</message>
<message>
<source>The readings are all alike, so a correlation says nothing.</source>
<translation>Die Messwerte sind alle gleich, also sagt eine Korrelation nichts.</translation>
</message>
<message>
<source>r² = {r2}: the estimate follows {value} % of how the readings vary from hole to hole; where the light is even this is low however good the estimate.</source>
<translation>r² = {r2}: Die Schätzung folgt {value} % dessen, wie die Messwerte von Loch zu Loch schwanken; wo das Licht gleichmäßig ist, ist das niedrig, wie gut die Schätzung auch ist.</translation>
</message>
<message>
<source>{count} of {total} readings differ by more than the meter's own uncertainty.</source>
<translation>{count} von {total} Messwerten weichen um mehr als die Unsicherheit des Messgeräts ab.</translation>
</message>
<message>
<source>Interpolated from readings alone; between holes it is a guess.</source>
<translation>Nur aus Messwerten interpoliert; zwischen den Löchern ist es geraten.</translation>
</message>
<message>
<source>thin_plate_spline</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.survey.table_cells</name>
<message>
<source>tabs</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>semicolons</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>commas</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>spaces</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>bars</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{shown}'</source>
<translation>„{shown}“</translation>
</message>
<message>
<source>this is a workbook in the old binary format; save it as .xlsx or as .csv first.</source>
<translation>dies ist eine Arbeitsmappe im alten Binärformat; zuerst als .xlsx oder .csv speichern.</translation>
</message>
<message>
<source>this is a PDF; copy the table into a spreadsheet and save it as .csv.</source>
<translation>dies ist ein PDF; die Tabelle in eine Tabellenkalkulation kopieren und als .csv speichern.</translation>
</message>
<message>
<source>utf-16</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>utf-8-sig</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cp1252</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>latin-1</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>this is not a text file; save the table as .csv or .xlsx.</source>
<translation>dies ist keine Textdatei; die Tabelle als .csv oder .xlsx speichern.</translation>
</message>
<message>
<source>the text holds zero bytes, so it is not a table; save it as .csv.</source>
<translation>der Text enthält Nullbytes, ist also keine Tabelle; als .csv speichern.</translation>
</message>
<message>
<source>the table has {count} rows; a survey holds at most {MAX_READINGS} readings, so thin it out or average it first.</source>
<translation>die Tabelle hat {count} Zeilen; eine Messung enthält höchstens {MAX_READINGS} Messwerte, also zuerst ausdünnen oder mitteln.</translation>
</message>
<message>
<source>the sign {separator}</source>
<translation>das Zeichen {separator}</translation>
</message>
<message>
<source>row {value} cannot be parted into cells ({error}); check its quotation marks.</source>
<translation>Zeile {value} lässt sich nicht in Zellen teilen ({error}); ihre Anführungszeichen prüfen.</translation>
</message>
<message>
<source>row {number} has {len} columns; a table of readings may have at most {MAX_COLUMNS}.</source>
<translation>Zeile {number} hat {len} Spalten; eine Tabelle mit Messwerten darf höchstens {MAX_COLUMNS} haben.</translation>
</message>
<message>
<source>the table is empty; copy the readings together with their places.</source>
<translation>die Tabelle ist leer; die Messwerte zusammen mit ihren Orten kopieren.</translation>
</message>
<message>
<source>{value} blocks of {wide} columns stand side by side.</source>
<translation>{value} Blöcke aus {wide} Spalten stehen nebeneinander.</translation>
</message>
<message>
<source> {fraction}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.survey.table_guess</name>
<message>
<source>Cells are parted by {word}.</source>
<translation>Zellen sind getrennt durch {word}.</translation>
</message>
<message>
<source>The decimal mark is the {value}.</source>
<translation>Das Dezimalzeichen ist {value}.</translation>
</message>
<message>
<source>comma</source>
<translation>das Komma</translation>
</message>
<message>
<source>point</source>
<translation>der Punkt</translation>
</message>
<message>
<source>The first row is</source>
<translation>Die erste Zeile ist</translation>
</message>
<message>
<source>The first {heading_rows} rows are</source>
<translation>Die ersten {heading_rows} Zeilen sind</translation>
</message>
<message>
<source>{rows} heading.</source>
<translation>{rows} Überschrift.</translation>
</message>
<message>
<source>Lengths are in {value}.</source>
<translation>Längen sind in {value}.</translation>
</message>
<message>
<source>Values are in {listed}.</source>
<translation>Werte sind in {listed}.</translation>
</message>
<message>
<source>far side (largest y)</source>
<translation>die ferne Seite (größtes y)</translation>
</message>
<message>
<source>near side (smallest y)</source>
<translation>die nahe Seite (kleinstes y)</translation>
</message>
<message>
<source>x along its first row and y down its first column</source>
<translation>x in der ersten Zeile und y in der ersten Spalte</translation>
</message>
<message>
<source>values only</source>
<translation>nichts als Werten</translation>
</message>
<message>
<source>names beside them</source>
<translation>Namen daneben</translation>
</message>
<message>
<source>The table is a picture of the board, with {axes}; its first row is the {end}.</source>
<translation>Die Tabelle ist ein Bild des Lochbretts, mit {axes}; ihre erste Zeile ist {end}.</translation>
</message>
<message>
<source>No column is taken for readings.</source>
<translation>Keine Spalte ist als Messwerte genommen.</translation>
</message>
<message>
<source>{value} {join}</source>
<translation>{value} {join}</translation>
</message>
<message>
<source>column</source>
<translation>Spalte</translation>
</message>
<message>
<source>columns</source>
<translation>Spalten</translation>
</message>
<message>
<source>{capitalize} holds readings in the order of the holes.</source>
<translation>{capitalize}: Messwerte in der Reihenfolge der Löcher.</translation>
</message>
<message>
<source>Column {hole} is the hole number, {told} the readings.</source>
<translation>Spalte {hole}: Lochnummer, {told}: Messwerte.</translation>
</message>
<message>
<source>{capitalize} holds readings; of x and y one is not named.</source>
<translation>{capitalize}: Messwerte; von x und y ist eines nicht benannt.</translation>
</message>
<message>
<source>Column {x} is x, column {y} is y, {told} the readings.</source>
<translation>Spalte {x}: x, Spalte {y}: y, {told}: Messwerte.</translation>
</message>
<message>
<source>{quoted} is read as {read}; if that is wrong, change the decimal mark.</source>
<translation>{quoted} ist als {read} gelesen; wenn das falsch ist, das Dezimalzeichen ändern.</translation>
</message>
<message>
<source>Column {number_of} ({name}) is passed over.</source>
<translation>Spalte {number_of} ({name}) wird übergangen.</translation>
</message>
<message>
<source> (a decimal comma?)</source>
<translation> (ein Dezimalkomma?)</translation>
</message>
<message>
<source>row {numbers}, column {number_of}: {quoted} stands under no heading{hint}; name its column, or part the cells by semicolons.</source>
<translation>Zeile {numbers}, Spalte {number_of}: {quoted} steht unter keiner Überschrift{hint}; die Spalte benennen oder die Zellen durch Semikolons trennen.</translation>
</message>
<message>
<source>Column {number_of} ({names}) is passed over: another says it in {value}.</source>
<translation>Spalte {number_of} ({names}) wird übergangen: Eine andere sagt es in {value}.</translation>
</message>
<message>
<source>No unit of length is given; metres are supposed.</source>
<translation>Keine Längeneinheit angegeben; Meter angenommen.</translation>
</message>
<message>
<source>No unit of length is given; centimetres are supposed.</source>
<translation>Keine Längeneinheit angegeben; Zentimeter angenommen.</translation>
</message>
<message>
<source>No unit of light is given; {PPFD_UNIT} is supposed.</source>
<translation>Keine Lichteinheit angegeben; {PPFD_UNIT} angenommen.</translation>
</message>
<message>
<source>No unit of light is given; such large numbers are taken for lux.</source>
<translation>Keine Lichteinheit angegeben; so große Zahlen werden als Lux genommen.</translation>
</message>
<message>
<source>no row of numbers was found; give a hole number and a reading in each row, or x, y and a reading, or a picture of the board.</source>
<translation>keine Zeile mit Zahlen gefunden; je Zeile eine Lochnummer und einen Messwert angeben, oder x, y und einen Messwert, oder ein Bild des Lochbretts.</translation>
</message>
<message>
<source>The first column counts and is taken for hole numbers.</source>
<translation>Die erste Spalte zählt und wird als Lochnummern genommen.</translation>
</message>
<message>
<source>row {numbers}: '{join}' may hold a decimal comma beside the commas that part the cells; part them by semicolons.</source>
<translation>Zeile {numbers}: „{join}“ kann neben den Kommas, die die Zellen trennen, ein Dezimalkomma enthalten; Zellen durch Semikolons trennen.</translation>
</message>
<message>
<source>Column {number_of} ({name}) is left out.</source>
<translation>Spalte {number_of} ({name}) wird ausgelassen.</translation>
</message>
<message>
<source>row {numbers} counts columns, but has one cell less than the rows below; put an empty cell before it.</source>
<translation>Zeile {numbers} zählt Spalten, hat aber eine Zelle weniger als die Zeilen darunter; eine leere Zelle davorsetzen.</translation>
</message>
<message>
<source>The first row counts 1 to {width} and is not taken for readings.</source>
<translation>Die erste Zeile zählt 1 bis {width} und wird nicht als Messwerte genommen.</translation>
</message>
<message>
<source>The first column counts 1 to {len} and is not taken for readings.</source>
<translation>Die erste Spalte zählt 1 bis {len} und wird nicht als Messwerte genommen.</translation>
</message>
<message>
<source>Nothing says which side the first row is; the far side is supposed.</source>
<translation>Nichts sagt, welche Seite die erste Zeile ist; die ferne Seite wird angenommen.</translation>
</message>
<message>
<source>the columns run from right to left ({quoted} first); turn them round, so that the left side comes first.</source>
<translation>die Spalten laufen von rechts nach links ({quoted} zuerst); umdrehen, sodass die linke Seite zuerst kommt.</translation>
</message>
</context>
<context>
<name>planner.survey.table_headings</name>
<message>
<source>mm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ft</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>klx</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fc</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>n/a</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>na</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>nan</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>n.a.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>null</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{upper} {lower}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>row {numbers}</source>
<translation>Zeile {numbers}</translation>
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the headings in {place} name {found} but no {lacking}; give both.</source>
<translation>die Überschriften in {place} nennen {found}, aber kein {lacking}; beide angeben.</translation>
</message>
<message>
<source>the headings in {place} name {word} more than once ({join}); keep one of them.</source>
<translation>die Überschriften in {place} nennen {word} mehr als einmal ({join}); nur eine davon behalten.</translation>
</message>
<message>
<source>the headings in {place} name no readings; call their column PPFD, lux or reading.</source>
<translation>die Überschriften in {place} nennen keine Messwerte; deren Spalte PPFD, lux oder Messwert nennen.</translation>
</message>
</context>
<context>
<name>planner.survey.table_reading</name>
<message>
<source>no column is taken for readings; name the one that holds them, or change what parts the cells.</source>
<translation>keine Spalte ist als Messwerte genommen; die Spalte mit ihnen benennen oder ändern, was die Zellen trennt.</translation>
</message>
<message>
<source>column {number_of} is {word}, but no column is {word2}; name both, or neither.</source>
<translation>Spalte {number_of} ist {word}, aber keine Spalte ist {word2}; beide benennen oder keine.</translation>
</message>
<message>
<source>the values are in W/m², which says nothing about photons; read PPFD or lux instead, or choose another unit if that is what they are.</source>
<translation>die Werte sind in W/m², was nichts über Photonen sagt; stattdessen PPFD oder Lux messen oder eine andere Einheit wählen, wenn sie in dieser sind.</translation>
</message>
<message>
<source>the values are in {value}; choose the lamp's spectrum, by which they become {PPFD_UNIT}.</source>
<translation>die Werte sind in {value}; das Spektrum der Lampe wählen, mit dem sie zu {PPFD_UNIT} werden.</translation>
</message>
<message>
<source>the table holds no readings; every value in it is empty.</source>
<translation>die Tabelle enthält keine Messwerte; jeder Wert darin ist leer.</translation>
</message>
<message>
<source>a survey holds at most {MAX_READINGS} readings, not {count}.</source>
<translation>eine Messung enthält höchstens {MAX_READINGS} Messwerte, nicht {count}.</translation>
</message>
<message>
<source>Row {numbers} ({first}) is left out.</source>
<translation>Zeile {numbers} ({first}) wird ausgelassen.</translation>
</message>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>The times are passed over: not every reading has one.</source>
<translation>Die Zeiten werden übergangen: Nicht jeder Messwert hat eine.</translation>
</message>
<message>
<source>Row</source>
<translation>Zeile</translation>
</message>
<message>
<source>Hole</source>
<translation>Messstelle</translation>
</message>
<message>
<source>{what}{value} {listed} {value2} no number ({join}).</source>
<translation>{what}{value} {listed} {value2} keine Zahl ({join}).</translation>
</message>
<message>
<source>s</source>
<translation>n</translation>
</message>
<message>
<source>have</source>
<translation>haben</translation>
</message>
<message>
<source>has</source>
<translation>hat</translation>
</message>
<message>
<source>Column {other} reads {value} % against column {first} throughout: if these are two surveys, take one column at a time.</source>
<translation>Spalte {other} zeigt durchweg {value} % gegenüber Spalte {first}: Sind das zwei Messungen, immer nur eine Spalte nehmen.</translation>
</message>
<message>
<source>Row {numbers} ({at}) is left out.</source>
<translation>Zeile {numbers} ({at}) wird ausgelassen.</translation>
</message>
<message>
<source>{quoted} is not a reading; write a number, or nothing</source>
<translation>{quoted} ist kein Messwert; eine Zahl schreiben oder nichts</translation>
</message>
<message>
<source>{quoted} is not in {value} as the rest</source>
<translation>{quoted} ist nicht in {value} wie die übrigen</translation>
</message>
<message>
<source>{quoted} is below zero, which no light is</source>
<translation>{quoted} liegt unter null, was Licht nie tut</translation>
</message>
<message>
<source>{beyond_sun}; check the unit (lux?) and the decimal mark</source>
<translation>{beyond_sun}; die Einheit (Lux?) und das Dezimalzeichen prüfen</translation>
</message>
<message>
<source>{quoted} is not a length</source>
<translation>{quoted} ist keine Länge</translation>
</message>
<message>
<source>{name} is missing</source>
<translation>{name} fehlt</translation>
</message>
<message>
<source>{what}; write for example 12.5 or 4 7/8 in</source>
<translation>{what}; zum Beispiel 12.5 oder 4 7/8 in schreiben</translation>
</message>
<message>
<source>{quoted} is not a hole number</source>
<translation>{quoted} ist keine Lochnummer</translation>
</message>
<message>
<source>the hole number is missing</source>
<translation>die Lochnummer fehlt</translation>
</message>
<message>
<source>{what}; holes count 1, 2, 3 and so on</source>
<translation>{what}; Löcher zählen 1, 2, 3 und so weiter</translation>
</message>
<message>
<source>row {numbers}, column {number_of}</source>
<translation>Zeile {numbers}, Spalte {number_of}</translation>
</message>
<message>
<source>{place}: {what}.</source>
<translation>{place}: {what}.</translation>
</message>
<message>
<source>row</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>column</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mean</source>
<translation>Mittel</translation>
</message>
<message>
<source>sum</source>
<translation>Summe</translation>
</message>
<message>
<source>the last {word} is the {name} of the others; leave it out, or name it '{name}' in the first {value}.</source>
<translation>die letzte {word} ist „{name}“ der anderen; weglassen, oder in der ersten {value} „{name}“ nennen.</translation>
</message>
<message>
<source>the table holds a reading of hole {highest}, but the survey has only {len} holes.</source>
<translation>die Tabelle enthält einen Messwert von Loch {highest}, aber die Messung hat nur {len} Löcher.</translation>
</message>
<message>
<source>no hole lies within {value} cm of x = {value2} cm, y = {value3} cm; check the unit of length and the corner the table counts from.</source>
<translation>kein Loch liegt innerhalb von {value} cm um x = {value2} cm, y = {value3} cm; die Längeneinheit prüfen und die Ecke, von der die Tabelle zählt.</translation>
</message>
<message>
<source>was not laid out as a grid</source>
<translation>wurde nicht als Raster angelegt</translation>
</message>
<message>
<source>has {rows} rows and {columns} columns</source>
<translation>hat {rows} Reihen und {columns} Spalten</translation>
</message>
<message>
<source>the table has {rows} rows and {columns} columns of values, but the survey {has}.</source>
<translation>die Tabelle hat {rows} Zeilen und {columns} Spalten mit Werten, aber die Messung {has}.</translation>
</message>
<message>
<source>the survey's grid has whole rows or columns without holes; give hole numbers instead of a picture of the board.</source>
<translation>das Raster der Messung hat ganze Reihen oder Spalten ohne Löcher; Lochnummern statt eines Bildes des Lochbretts angeben.</translation>
</message>
<message>
<source>the table holds {value} at x = {value2} cm, y = {value3} cm, where the survey has no hole.</source>
<translation>die Tabelle enthält {value} bei x = {value2} cm, y = {value3} cm, wo die Messung kein Loch hat.</translation>
</message>
<message>
<source>outside the space</source>
<translation>außerhalb des Raums</translation>
</message>
<message>
<source>the table names holes by number only; lay out the survey first, then put the table onto it.</source>
<translation>die Tabelle nennt Löcher nur mit Nummern; zuerst die Messung anlegen, dann die Tabelle darauf legen.</translation>
</message>
<message>
<source>the place x = {value} cm, y = {value2} cm lies {outside}; check the unit of length (mm?) and the corner the table counts from.</source>
<translation>der Ort x = {value} cm, y = {value2} cm liegt {outside}; die Längeneinheit prüfen (mm?) und die Ecke, von der die Tabelle zählt.</translation>
</message>
<message>
<source>a survey has at most {MAX_POINTS} holes, not {len}.</source>
<translation>eine Messung hat höchstens {MAX_POINTS} Löcher, nicht {len}.</translation>
</message>
<message>
<source>the table has {rows} rows and {columns} columns of values; a grid has at most {MAX_GRID} of each.</source>
<translation>die Tabelle hat {rows} Zeilen und {columns} Spalten mit Werten; ein Raster hat von beiden höchstens {MAX_GRID}.</translation>
</message>
<message>
<source>the table holds {value} at row {value2} from the near side, column {value3}, which lies {outside}.</source>
<translation>die Tabelle enthält {value} in Reihe {value2} von der nahen Seite, Spalte {value3}: Das liegt {outside}.</translation>
</message>
</context>
<context>
<name>planner.survey.table_workbook</name>
<message>
<source>the workbook holds no filled sheet; enter the readings in the first one.</source>
<translation>die Arbeitsmappe enthält kein gefülltes Blatt; die Messwerte in das erste eintragen.</translation>
</message>
<message>
<source>the workbook is damaged or locked; open it in a spreadsheet and save it as .csv.</source>
<translation>die Arbeitsmappe ist beschädigt oder gesperrt; in einer Tabellenkalkulation öffnen und als .csv speichern.</translation>
</message>
<message>
<source>the workbook is too large; copy the readings into a new one.</source>
<translation>die Arbeitsmappe ist zu groß; die Messwerte in eine neue kopieren.</translation>
</message>
<message>
<source>row {value} has more than {MAX_COLUMNS} columns; copy the readings into a sheet of their own.</source>
<translation>Zeile {value} hat mehr als {MAX_COLUMNS} Spalten; die Messwerte in ein eigenes Blatt kopieren.</translation>
</message>
<message>
<source>the sheet reaches down to row {value}; a survey holds at most {MAX_READINGS} readings, so thin them out or average them first.</source>
<translation>das Blatt reicht bis Zeile {value} hinab; eine Messung enthält höchstens {MAX_READINGS} Messwerte, also zuerst ausdünnen oder mitteln.</translation>
</message>
<message>
<source>w</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.xml</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>.rels</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>the workbook has {cells} cells or texts in one sheet; copy the readings into a new one.</source>
<translation>die Arbeitsmappe hat {cells} Zellen oder Texte in einem Blatt; die Messwerte in eine neue kopieren.</translation>
</message>
<message>
<source>Id</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Target</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xl/</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xl/_rels/workbook.xml.rels</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Relationship</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xl/styles.xml</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xl/workbook.xml</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sheet</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xl/{get}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>numFmtId</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>numFmt</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>xf</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>col</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>row</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>c</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hidden</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>max</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>min</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>r</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>t</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>#error</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>n</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>s</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>A</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>table</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>table-column</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>table-row</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>table-cell</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>covered-table-cell</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>table:number-{value}-repeated</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>rows</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>columns</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>table:visibility</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>visible</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>table:name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>office:value-type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>calcext:value-type</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Row {value} is hidden and left out.</source>
<translation>Zeile {value} ist verborgen und wird ausgelassen.</translation>
</message>
<message>
<source>the sheet has more than {MAX_ROWS} rows; thin the readings out or average them first.</source>
<translation>das Blatt hat mehr als {MAX_ROWS} Zeilen; die Messwerte zuerst ausdünnen oder mitteln.</translation>
</message>
<message>
<source>Hidden and left out: column {listed}.</source>
<translation>Verborgen und ausgelassen: Spalte {listed}.</translation>
</message>
<message>
<source>= (not calculated)</source>
<translation>= (nicht berechnet)</translation>
</message>
<message>
<source>{value} %</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>planner.units</name>
<message>
<source>µmol m⁻² s⁻¹</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mol m⁻² d⁻¹</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>µmol s⁻¹</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>µmol J⁻¹</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>mm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ft</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>\d+/\d+|\d+(?:(?:\s+|-)\d+/\d+)|\d+(?:[.,]\d*)?|[.,]\d+</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{text}' can be read as {readings} or as {readings2}; write which of the two.</source>
<translation>„{text}“ kann {readings} oder {readings2} bedeuten; eines von beiden schreiben.</translation>
</message>
<message>
<source>'{text}' is not a number.</source>
<translation>„{text}“ ist keine Zahl.</translation>
</message>
<message>
<source>{whole}.{rstrip}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{number}0</source>
<translation>{number}0</translation>
</message>
<message>
<source>'{text}' divides by zero.</source>
<translation>„{text}“ teilt durch null.</translation>
</message>
<message>
<source>'{text}' is no length anybody can measure.</source>
<translation>„{text}“ ist keine Länge, die sich messen lässt.</translation>
</message>
<message>
<source>µμ²³⁻¹−</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>uu23-1-</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> {fraction}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>'{text}' is not a length; write for example 59,5 cm, 0.6 m or 23 5/8 in.</source>
<translation>„{text}“ ist keine Länge; zum Beispiel 59,5 cm, 0.6 m oder 23 5/8 in schreiben.</translation>
</message>
<message>
<source>{value}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{text} {value}</source>
<translation>{text} {value}</translation>
</message>
<message>
<source>{value}/{value2}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>-{text}</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>{format_number} cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source> and </source>
<translation> und </translation>
</message>
</context>
<context>
<name>keys</name>
<message>
<source>x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lamp</source>
<translation>Lampe</translation>
</message>
<message>
<source>obstacle</source>
<translation>Hindernis</translation>
</message>
<message>
<source>wall</source>
<translation>Wand</translation>
</message>
<message>
<source>corner</source>
<translation>Ecke</translation>
</message>
<message>
<source>section</source>
<translation>Schnitt</translation>
</message>
<message>
<source>section start</source>
<translation>Anfang des Schnitts</translation>
</message>
<message>
<source>section end</source>
<translation>Ende des Schnitts</translation>
</message>
<message>
<source>turn</source>
<translation>Drehgriff</translation>
</message>
<message>
<source>turn obstacle</source>
<translation>Drehgriff</translation>
</message>
<message>
<source>canopy</source>
<translation>Blätterdach</translation>
</message>
<message>
<source>ceiling</source>
<translation>Decke</translation>
</message>
<message>
<source>floor</source>
<translation>Boden</translation>
</message>
<message>
<source>band edge</source>
<translation>Streifenkante</translation>
</message>
<message>
<source>inside</source>
<translation>Raum</translation>
</message>
<message>
<source>outside</source>
<translation>außen</translation>
</message>
<message>
<source>light</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>outlook</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lining</source>
<translation>Auskleidung</translation>
</message>
<message>
<source>difference</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ratio</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Readings on the estimate</source>
<translation>Messwerte auf der Schätzung</translation>
</message>
<message>
<source>Measured minus estimated</source>
<translation>Gemessen minus geschätzt</translation>
</message>
<message>
<source>Measured over estimated</source>
<translation>Gemessen durch geschätzt</translation>
</message>
<message>
<source>Readings alone beside the estimate</source>
<translation>Messwerte allein neben der Schätzung</translation>
</message>
<message>
<source>system</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dark</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>point</source>
<translation>Punkt</translation>
</message>
<message>
<source>rectangle</source>
<translation>Rechteck</translation>
</message>
<message>
<source>box</source>
<translation>Quader</translation>
</message>
<message>
<source>circle</source>
<translation>Kreis</translation>
</message>
<message>
<source>ellipse</source>
<translation>Ellipse</translation>
</message>
<message>
<source>vertical cylinder</source>
<translation>stehender Zylinder</translation>
</message>
<message>
<source>vertical elliptical cylinder</source>
<translation>stehender elliptischer Zylinder</translation>
</message>
<message>
<source>sphere</source>
<translation>Kugel</translation>
</message>
<message>
<source>ellipsoid</source>
<translation>Ellipsoid</translation>
</message>
<message>
<source>horizontal cylinder along the 0° plane</source>
<translation>liegender Zylinder längs der 0°-Ebene</translation>
</message>
<message>
<source>horizontal cylinder across the 0° plane</source>
<translation>liegender Zylinder quer zur 0°-Ebene</translation>
</message>
<message>
<source>vertical circle</source>
<translation>stehender Kreis</translation>
</message>
<message>
<source>vertical ellipse</source>
<translation>stehende Ellipse</translation>
</message>
<message>
<source>A</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>B</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>C</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>axial</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>quadrant</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about 0-180</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about 90-270</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>none</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>published</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>quoted</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>memory</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>usage: </source>
<translation>Aufruf: </translation>
</message>
<message>
<source>positional arguments</source>
<translation>Angaben</translation>
</message>
<message>
<source>options</source>
<translation>Optionen</translation>
</message>
<message>
<source>show this help message and exit</source>
<translation>diese Hilfe zeigen</translation>
</message>
<message>
<source>show program's version number and exit</source>
<translation>die Version des Programms zeigen</translation>
</message>
<message>
<source>argument %(argument_name)s: %(message)s</source>
<translation>%(argument_name)s: %(message)s</translation>
</message>
<message>
<source>the following arguments are required: %s</source>
<translation>es fehlt noch: %s</translation>
</message>
<message>
<source>unrecognized arguments: %s</source>
<translation>unbekannte Angaben: %s</translation>
</message>
<message>
<source>invalid choice: %(value)r (choose from %(choices)s)</source>
<translation>%(value)r steht nicht zur Wahl; möglich sind %(choices)s</translation>
</message>
<message>
<source>invalid %(type)s value: %(value)r</source>
<translation>%(value)r passt nicht (erwartet: %(type)s)</translation>
</message>
<message>
<source>not allowed with argument %s</source>
<translation>geht nicht zusammen mit %s</translation>
</message>
<message>
<source>one of the arguments %s is required</source>
<translation>eines davon wird gebraucht: %s</translation>
</message>
<message>
<source>expected one argument</source>
<translation>hier fehlt ein Wert</translation>
</message>
<message>
<source>expected at least one argument</source>
<translation>hier fehlt mindestens ein Wert</translation>
</message>
<message>
<source>ambiguous option: %(option)s could match %(matches)s</source>
<translation>mehrdeutige Option: %(option)s kann %(matches)s heißen</translation>
</message>
<message>
<source>ignored explicit argument %r</source>
<translation>der Wert %r gehört nicht hierher</translation>
</message>
<message>
<source>flux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gain</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>exponent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fall</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shift x</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>shift y</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>reflectance</source>
<translation>Reflexionsgrad</translation>
</message>
<message>
<source>specular share</source>
<translation>Spiegelanteil</translation>
</message>
<message>
<source>hanging height</source>
<translation>Hängehöhe</translation>
</message>
<message>
<source>sensor height</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>board reflectance</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output</source>
<translation>Dimmung</translation>
</message>
<message>
<source>drift</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>open part of the door</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>light from all sides</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>plan</source>
<translation>Plan</translation>
</message>
<message>
<source>variant</source>
<translation>Variante</translation>
</message>
<message>
<source>open air</source>
<translation>im Freien</translation>
</message>
<message>
<source>nothing</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tier</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wishes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>most even</source>
<translation>gleichmäßigste</translation>
</message>
<message>
<source>least energy</source>
<translation>sparsamste</translation>
</message>
<message>
<source>cheapest</source>
<translation>günstigste</translation>
</message>
<message>
<source>mean</source>
<translation>Mittel</translation>
</message>
<message>
<source>minimum</source>
<translation>Minimum</translation>
</message>
<message>
<source>height</source>
<translation>Höhe</translation>
</message>
<message>
<source>photoperiod</source>
<translation>Beleuchtungsdauer</translation>
</message>
<message>
<source>places</source>
<translation>Plätze</translation>
</message>
<message>
<source>lamps</source>
<translation>Lampen</translation>
</message>
<message>
<source>lowest</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>evenness</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>preview</source>
<translation>Vorschau</translation>
</message>
<message>
<source>default</source>
<translation>Standard</translation>
</message>
<message>
<source>fine</source>
<translation>fein</translation>
</message>
<message>
<source>table of readings</source>
<translation>Tabelle mit Messwerten</translation>
</message>
<message>
<source>lamp file</source>
<translation>Lampendatei</translation>
</message>
<message>
<source>obstacles</source>
<translation>Hindernisse</translation>
</message>
<message>
<source>linings</source>
<translation>Auskleidungen</translation>
</message>
<message>
<source>key</source>
<translation>Schlüssel</translation>
</message>
<message>
<source>name</source>
<translation>Name</translation>
</message>
<message>
<source>length</source>
<translation>Länge</translation>
</message>
<message>
<source>width</source>
<translation>Breite</translation>
</message>
<message>
<source>thickness</source>
<translation>Dicke</translation>
</message>
<message>
<source>over canopy</source>
<translation>über dem Blätterdach</translation>
</message>
<message>
<source>black</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>grows</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>equal gaps</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>spans</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>at</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gaps</source>
<translation>Lücken</translation>
</message>
<message>
<source>to</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>place</source>
<translation>Ort</translation>
</message>
<message>
<source>index</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>dial</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>value</source>
<translation>Wert</translation>
</message>
<message>
<source>words</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>note</source>
<translation>Hinweis</translation>
</message>
<message>
<source>caution</source>
<translation>Warnhinweis</translation>
</message>
<message>
<source>warning</source>
<translation>Problem</translation>
</message>
<message>
<source>severity</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>sentence</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>where</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>roll</source>
<translation>Rolle</translation>
</message>
<message>
<source>sheet</source>
<translation>Platte</translation>
</message>
<message>
<source>form</source>
<translation>Form</translation>
</message>
<message>
<source>price</source>
<translation>Preis</translation>
</message>
<message>
<source>model</source>
<translation>Modell</translation>
</message>
<message>
<source>price per kwh</source>
<translation>Preis je kWh</translation>
</message>
<message>
<source>currency</source>
<translation>Währung</translation>
</message>
<message>
<source>overlap</source>
<translation>Überlappung</translation>
</message>
<message>
<source>seams</source>
<translation>Nähte</translation>
</message>
<message>
<source>goods</source>
<translation>Ware</translation>
</message>
<message>
<source>lamp prices</source>
<translation>Lampenpreise</translation>
</message>
<message>
<source>span months</source>
<translation>Monate</translation>
</message>
<message>
<source>quantity</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>one</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>redo</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>step name</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>about</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room</source>
<translation>Raum</translation>
</message>
<message>
<source>sound</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>together</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>watts</source>
<translation>Leistung (W)</translation>
</message>
<message>
<source>dirt</source>
<translation>Schmutz</translation>
</message>
<message>
<source>underside</source>
<translation>Unterseite</translation>
</message>
<message>
<source>left</source>
<translation>links</translation>
</message>
<message>
<source>centre</source>
<translation>Mitte</translation>
</message>
<message>
<source>right</source>
<translation>rechts</translation>
</message>
<message>
<source>front</source>
<translation>vorn</translation>
</message>
<message>
<source>middle</source>
<translation>mittig</translation>
</message>
<message>
<source>back</source>
<translation>hinten</translation>
</message>
<message>
<source>kind</source>
<translation>Art</translation>
</message>
<message>
<source>count</source>
<translation>Anzahl</translation>
</message>
<message>
<source>bar width</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>angles deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>relative</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>azimuths deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>body</source>
<translation>Leuchtkörper</translation>
</message>
<message>
<source>profile</source>
<translation>Abstrahlung</translation>
</message>
<message>
<source>ppf</source>
<translation>Photonenfluss</translation>
</message>
<message>
<source>housing height</source>
<translation>Gehäusehöhe</translation>
</message>
<message>
<source>housing reflectance</source>
<translation>Reflexionsgrad des Gehäuses</translation>
</message>
<message>
<source>ppf uncertainty</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hours to 90</source>
<translation>Stunden bis 90 %</translation>
</message>
<message>
<source>beam uncertainty deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wavebands</source>
<translation>Farben</translation>
</message>
<message>
<source>dimmable</source>
<translation>dimmbar</translation>
</message>
<message>
<source>source</source>
<translation>Quelle</translation>
</message>
<message>
<source>rotation deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tilt deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>output percent</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hours run</source>
<translation>Betriebsstunden</translation>
</message>
<message>
<source>dust</source>
<translation>Staub</translation>
</message>
<message>
<source>label</source>
<translation>Beschriftung</translation>
</message>
<message>
<source>the right</source>
<translation>rechts</translation>
</message>
<message>
<source>the back right</source>
<translation>hinten rechts</translation>
</message>
<message>
<source>the back</source>
<translation>hinten</translation>
</message>
<message>
<source>the back left</source>
<translation>hinten links</translation>
</message>
<message>
<source>the left</source>
<translation>links</translation>
</message>
<message>
<source>the front left</source>
<translation>vorn links</translation>
</message>
<message>
<source>the front</source>
<translation>vorn</translation>
</message>
<message>
<source>the front right</source>
<translation>vorn rechts</translation>
</message>
<message>
<source>conducts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>burns</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>melts</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tears</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>not-cleanable</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>holds-moisture</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hot-spots</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wrinkle</source>
<translation>Knitter</translation>
</message>
<message>
<source>low</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>high</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cautions</source>
<translation>Warnhinweise</translation>
</message>
<message>
<source>top</source>
<translation>Oberkante</translation>
</message>
<message>
<source>bands</source>
<translation>Streifen</translation>
</message>
<message>
<source>footprint</source>
<translation>Grundriss</translation>
</message>
<message>
<source>optics</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>boxes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>canopy height</source>
<translation>Höhe des Blätterdachs</translation>
</message>
<message>
<source>entering</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>hours</source>
<translation>Stunden</translation>
</message>
<message>
<source>band</source>
<translation>Streifen</translation>
</message>
<message>
<source>tops</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room hours</source>
<translation>Stunden Zimmerlicht</translation>
</message>
<message>
<source>judged</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>figures</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>costs</source>
<translation>Kosten</translation>
</message>
<message>
<source>doubts</source>
<translation>Zweifel</translation>
</message>
<message>
<source>stages</source>
<translation>Stadien</translation>
</message>
<message>
<source>space</source>
<translation>Raum</translation>
</message>
<message>
<source>housing</source>
<translation>Gehäuse</translation>
</message>
<message>
<source>walls</source>
<translation>Wände</translation>
</message>
<message>
<source>photoperiod hours</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>setup</source>
<translation>Aufbau</translation>
</message>
<message>
<source>format</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>target</source>
<translation>Ziel</translation>
</message>
<message>
<source>surveys</source>
<translation>Messungen</translation>
</message>
<message>
<source>variants</source>
<translation>Varianten</translation>
</message>
<message>
<source>baseline</source>
<translation>Basis</translation>
</message>
<message>
<source>schedule</source>
<translation>Zeitplan</translation>
</message>
<message>
<source>suffix</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>decimals</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>step</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>factor</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>maximum</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>is length</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>above</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>why least</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>why most</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>lux</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>weeks</source>
<translation>Wochen</translation>
</message>
<message>
<source>months</source>
<translation>Monate</translation>
</message>
<message>
<source>door</source>
<translation>Tür</translation>
</message>
<message>
<source>door open</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>room light</source>
<translation>Licht des Zimmers</translation>
</message>
<message>
<source>closed</source>
<translation>geschlossen</translation>
</message>
<message>
<source>power</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>photons</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>wavelengths nm</source>
<translation>Wellenlängen</translation>
</message>
<message>
<source>values</source>
<translation>Werte</translation>
</message>
<message>
<source>is model</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cells</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>edges</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>paper</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>white card</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>grey card</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>own</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>gain uncertainty</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>noise</source>
<translation>Rauschen</translation>
</message>
<message>
<source>response angles deg</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>response relative</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cosine</source>
<translation>Kosinus</translation>
</message>
<message>
<source>rows</source>
<translation>Reihen</translation>
</message>
<message>
<source>columns</source>
<translation>Spalten</translation>
</message>
<message>
<source>margin</source>
<translation>Rand</translation>
</message>
<message>
<source>spacing</source>
<translation>Abstand</translation>
</message>
<message>
<source>hole diameter</source>
<translation>Lochdurchmesser</translation>
</message>
<message>
<source>excluded</source>
<translation>ausgelassen</translation>
</message>
<message>
<source>hole</source>
<translation>Loch</translation>
</message>
<message>
<source>aside</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>date</source>
<translation>Datum</translation>
</message>
<message>
<source>meter</source>
<translation>Messgerät</translation>
</message>
<message>
<source>lux per umol</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>on top</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>board</source>
<translation>Lochbrett</translation>
</message>
<message>
<source>warm up minutes</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>grid</source>
<translation>Raster</translation>
</message>
<message>
<source>points</source>
<translation>Löcher</translation>
</message>
<message>
<source>readings</source>
<translation>Messwerte</translation>
</message>
<message>
<source>crop</source>
<translation>Kultur</translation>
</message>
<message>
<source>blue</source>
<translation>Blau</translation>
</message>
<message>
<source>green</source>
<translation>Grün</translation>
</message>
<message>
<source>red</source>
<translation>Rot</translation>
</message>
<message>
<source>far red</source>
<translation>Fernrot</translation>
</message>
<message>
<source>a4</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>letter</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>tabs</source>
<translation>Tabulatoren</translation>
</message>
<message>
<source>semicolons</source>
<translation>Semikolons</translation>
</message>
<message>
<source>bars</source>
<translation>senkrechte Striche</translation>
</message>
<message>
<source>commas</source>
<translation>Kommas</translation>
</message>
<message>
<source>spaces</source>
<translation>Leerzeichen</translation>
</message>
<message>
<source>matrix</source>
<translation>Raster</translation>
</message>
<message>
<source>numbered</source>
<translation>nummeriert</translation>
</message>
<message>
<source>in order</source>
<translation>der Reihe nach</translation>
</message>
<message>
<source>time</source>
<translation>Zeit</translation>
</message>
<message>
<source>passed over</source>
<translation>übergangen</translation>
</message>
<message>
<source>mm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>cm</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>m</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>in</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>ft</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>klx</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>fc</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>W/m²</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
</context>
<context>
<name>data</name>
<message>
<source>What a lining, and what else a plan holds, asks of its reader. These words replace neither the makers' instructions nor local codes nor licensed practice.</source>
<translation>Was eine Auskleidung und was sonst im Plan steht, an Vorsicht verlangt. Diese Worte ersetzen weder Anleitungen der Hersteller noch örtliche Vorschriften noch die Arbeit von Fachleuten.</translation>
</message>
<message>
<source>Conducts electricity</source>
<translation>Leitet Strom</translation>
</message>
<message>
<source>This lining conducts and can bridge live parts or a damaged cable. Keep it off terminals, plugs, drivers and cable entries, and leave mains wiring to a licensed electrician working to the local code.</source>
<translation>Diese Auskleidung leitet und kann spannungsführende Teile oder ein beschädigtes Kabel überbrücken. Von Klemmen, Steckern, Treibern und Kabeleinführungen fernhalten; die Netzverdrahtung einer Elektrofachkraft überlassen, die nach den örtlichen Vorschriften arbeitet.</translation>
</message>
<message>
<source>Burns</source>
<translation>Brennt</translation>
</message>
<message>
<source>This lining can burn. Keep it outside the clearance the lamp's maker asks for, and never over vents, drivers or the lamp itself; local fire rules come first.</source>
<translation>Diese Auskleidung kann brennen. Den Abstand einhalten, den der Hersteller der Lampe verlangt, und nie über Lüftungsöffnungen, Treiber oder die Lampe selbst legen; örtliche Brandschutzregeln gehen vor.</translation>
</message>
<message>
<source>Melts</source>
<translation>Schmilzt</translation>
</message>
<message>
<source>This lining softens or melts when hot (polyester near 250 °C, polyethylene near 110 °C, both lose shape earlier). Keep it outside the clearance the lamp's maker asks for.</source>
<translation>Diese Auskleidung wird heiß weich oder schmilzt (Polyester bei etwa 250 °C, Polyethylen bei etwa 110 °C; beide verformen sich schon früher). Den Abstand einhalten, den der Hersteller der Lampe verlangt.</translation>
</message>
<message>
<source>Tears</source>
<translation>Reißt</translation>
</message>
<message>
<source>This lining tears easily. Fix it to a stiff board so that no loose edge can reach a lamp or a fan.</source>
<translation>Diese Auskleidung reißt leicht. Auf einer steifen Platte befestigen, damit keine lose Kante an eine Lampe oder einen Lüfter gerät.</translation>
</message>
<message>
<source>Cannot be wiped clean</source>
<translation>Nicht abwischbar</translation>
</message>
<message>
<source>This lining does not bear wiping. Dust and splashes cost light: plan to renew it, or put a washable one low down.</source>
<translation>Diese Auskleidung verträgt kein Abwischen. Staub und Spritzer kosten Licht: Erneuerung einplanen oder unten eine abwaschbare anbringen.</translation>
</message>
<message>
<source>Holds moisture</source>
<translation>Hält Feuchtigkeit</translation>
</message>
<message>
<source>This lining soaks up water and may grow mould. Keep the air moving, keep the humidity of the room below 60 %, and dry what got wet within one or two days.</source>
<translation>Diese Auskleidung saugt Wasser auf und kann schimmeln. Die Luft in Bewegung halten, die Luftfeuchte des Zimmers unter 60 % halten und Nasses innerhalb von ein bis zwei Tagen trocknen.</translation>
</message>
<message>
<source>Hot spots</source>
<translation>Lichtflecken</translation>
</message>
<message>
<source>A mirror-like lining that is curved or creased can focus light. Look at plants, cables and linings after the first hour, and smooth or turn the lining where a bright spot falls.</source>
<translation>Eine gewölbte oder geknitterte spiegelnde Auskleidung kann Licht bündeln. Nach der ersten Stunde Pflanzen, Kabel und Auskleidungen ansehen; wo ein heller Fleck hinfällt, die Auskleidung glätten oder drehen.</translation>
</message>
<message>
<source>Mains and water</source>
<translation>Netz und Wasser</translation>
</message>
<message>
<source>Electricity and water</source>
<translation>Strom und Wasser</translation>
</message>
<message>
<source>Lamps on the mains ({lamps}) above watered plants need a residual current device and fittings certified for damp places; leave fixed wiring to a licensed electrician working to the local code.</source>
<translation>Lampen am Netz ({lamps}) über gegossenen Pflanzen brauchen einen Fehlerstrom-Schutzschalter und Leuchten, die für feuchte Räume zugelassen sind; feste Verdrahtung einer Elektrofachkraft überlassen, die nach den örtlichen Vorschriften arbeitet.</translation>
</message>
<message>
<source>Heat</source>
<translation>Wärme</translation>
</message>
<message>
<source>Heat and fire</source>
<translation>Wärme und Brand</translation>
</message>
<message>
<source>The lamps draw {watts} W, and almost all of it ends as heat: to stay {rise} K above the room, about {flow} m³ of air an hour have to pass, beyond what fans lose in ducts and filters.</source>
<translation>Die Lampen nehmen {watts} W auf, und fast alles davon wird Wärme: Um {rise} K über dem Zimmer zu bleiben, müssen etwa {flow} m³ Luft je Stunde durchströmen, über das hinaus, was Lüfter in Rohren und Filtern verlieren.</translation>
</message>
<message>
<source>Fire</source>
<translation>Brand</translation>
</message>
<message>
<source>Of what burns or melts, {lining} comes nearest to a lamp: {distance} from lamp {lamp}. Keep the clearance the lamp's maker asks for; local fire rules come first.</source>
<translation>Von allem, was brennt oder schmilzt, kommt {lining} einer Lampe am nächsten: {distance} zu Lampe {lamp}. Den Abstand einhalten, den der Hersteller der Lampe verlangt; örtliche Brandschutzregeln gehen vor.</translation>
</message>
<message>
<source>Eyes</source>
<translation>Augen</translation>
</message>
<message>
<source>Eyes and skin</source>
<translation>Augen und Haut</translation>
</message>
<message>
<source>Do not look into a lamp that is on, heed the risk group printed on it (IEC 62471), and switch it off or wear glasses made for the purpose when you work below it.</source>
<translation>Nicht in eine brennende Lampe blicken, die aufgedruckte Risikogruppe beachten (IEC 62471) und zum Arbeiten darunter ausschalten oder eine dafür gemachte Brille tragen.</translation>
</message>
<message>
<source>Moisture and mould</source>
<translation>Feuchtigkeit und Schimmel</translation>
</message>
<message>
<source>Wet plants in {volume} m³ of enclosed air make it damp: keep the air moving and the humidity of the room below 60 %, and dry what got wet within one or two days.</source>
<translation>Nasse Pflanzen in {volume} m³ eingeschlossener Luft machen sie feucht: die Luft in Bewegung halten, die Luftfeuchte des Zimmers unter 60 % halten und Nasses innerhalb von ein bis zwei Tagen trocknen.</translation>
</message>
<message>
<source>Carbon dioxide</source>
<translation>Kohlendioxid</translation>
</message>
<message>
<source>Nothing here is reckoned for added carbon dioxide, which can suffocate: do not enrich a space that shares its air with rooms people live or sleep in, and heed the local workplace limit.</source>
<translation>Nichts hier ist für zugesetztes Kohlendioxid gerechnet, an dem man ersticken kann: keinen Raum anreichern, dessen Luft mit Wohn- oder Schlafräumen in Verbindung steht, und den örtlichen Arbeitsplatzgrenzwert beachten.</translation>
</message>
<message>
<source>Hanging loads</source>
<translation>Hängende Lasten</translation>
</message>
<message>
<source>Hanging, children and pets</source>
<translation>Aufhängung, Kinder und Tiere</translation>
</message>
<message>
<source>Each lamp to be hung ({lamps}) needs two fixings that each carry its whole weight, in something that bears both; where a ceiling's strength is not known, ask a builder.</source>
<translation>Jede aufzuhängende Lampe ({lamps}) braucht zwei Befestigungen, von denen jede ihr ganzes Gewicht trägt, in etwas, das beide hält; wo die Tragfähigkeit der Decke unbekannt ist, eine Baufachkraft fragen.</translation>
</message>
<message>
<source>Guidance bands for common crops. 'There is no such thing as a DLI requirement' (E. Runkle, GPN magazine): plants grow below and above a band, and variety, temperature, carbon dioxide and water matter as much. A band is where to begin, never a pass or a fail.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>Seedlings</source>
<translation>Jungpflanzen</translation>
</message>
<message>
<source>From the first true leaves to transplanting.</source>
<translation>Von den ersten Laubblättern bis zum Umpflanzen.</translation>
</message>
<message>
<source>before transplanting</source>
<translation>vor dem Umpflanzen</translation>
</message>
<message>
<source>Published: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 8-14, also for plants of full sun. Photoperiod: popular pages agree on 14-16 h.</source>
<translation>Veröffentlicht: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 8-14, auch für Pflanzen in voller Sonne. Beleuchtungsdauer: verbreitete Seiten nennen übereinstimmend 14-16 h.</translation>
</message>
<message>
<source>just germinated</source>
<translation>frisch gekeimt</translation>
</message>
<message>
<source>typical, from memory</source>
<translation>üblich, aus dem Gedächtnis</translation>
</message>
<message>
<source>Lettuce</source>
<translation>Salat</translation>
</message>
<message>
<source>seedlings</source>
<translation>Jungpflanzen</translation>
</message>
<message>
<source>Published: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): seedlings 8-14. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): Jungpflanzen 8-14. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>leaf and head</source>
<translation>Blatt und Kopf</translation>
</message>
<message>
<source>Published, quoted second-hand: at least 12 for leafy greens and herbs in controlled environments (Plants (2024) 13(5), 652); 17 as the limit for tip burn with good air flow (Cornell hydroponic lettuce handbook, cited from memory). 215 µmol/m²/s for 16 h was used by G. Pennisi et al. (2019), Sci. Rep. 9:14127.</source>
<translation>Veröffentlicht, aus zweiter Hand zitiert: mindestens 12 für Blattgemüse und Kräuter in geregelter Umgebung (Plants (2024) 13(5), 652); 17 als Grenze für Blattrandbrand bei guter Luftbewegung (Cornell hydroponic lettuce handbook, aus dem Gedächtnis zitiert). 215 µmol/m²/s für 16 h verwendeten G. Pennisi et al. (2019), Sci. Rep. 9:14127.</translation>
</message>
<message>
<source>Above about 17 the inner leaves may burn at the tips unless air moves over them.</source>
<translation>Über etwa 17 können die inneren Blätter an den Spitzen verbrennen, wenn keine Luft über sie streicht.</translation>
</message>
<message>
<source>Basil</source>
<translation>Basilikum</translation>
</message>
<message>
<source>Published: trial levels 100, 200, 400 and 600 µmol/m²/s; more light raised later yield (R. G. Lopez, Lighting basil seedlings, Produce Grower). The band is chosen from the trial's levels. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: Versuchsstufen 100, 200, 400 und 600 µmol/m²/s; mehr Licht erhöhte den späteren Ertrag (R. G. Lopez, Lighting basil seedlings, Produce Grower). Der Bereich ist aus den Versuchsstufen gewählt. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>leaf harvest</source>
<translation>Blatternte</translation>
</message>
<message>
<source>155 µmol/m²/s for 20 h was used in small tents by M. M. Rahman, M. Vasiliev, K. Alameh (2021), Plants 10, 344.</source>
<translation>155 µmol/m²/s für 20 h verwendeten in kleinen Zelten M. M. Rahman, M. Vasiliev, K. Alameh (2021), Plants 10, 344.</translation>
</message>
<message>
<source>Herbs (parsley, coriander, chives, thyme)</source>
<translation>Kräuter (Petersilie, Koriander, Schnittlauch, Thymian)</translation>
</message>
<message>
<source>Published, quoted second-hand: at least 12 for leafy greens and herbs in controlled environments (Plants (2024) 13(5), 652). Upper end: typical, from memory.</source>
<translation>Veröffentlicht, aus zweiter Hand zitiert: mindestens 12 für Blattgemüse und Kräuter in geregelter Umgebung (Plants (2024) 13(5), 652). Oberes Ende: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Microgreens</source>
<translation>Microgreens</translation>
</message>
<message>
<source>sowing to harvest</source>
<translation>Aussaat bis Ernte</translation>
</message>
<message>
<source>Published: trials at 6, 12 and 18 mol/m²/d (J. K. Craver, J. R. Gerovac, R. G. Lopez, D. A. Kopsell (2017), J. Amer. Soc. Hort. Sci. 142(1), 3-12). The band spans the trial. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: Versuche bei 6, 12 und 18 mol/m²/d (J. K. Craver, J. R. Gerovac, R. G. Lopez, D. A. Kopsell (2017), J. Amer. Soc. Hort. Sci. 142(1), 3-12). Der Bereich umspannt den Versuch. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>little light, quick harvest</source>
<translation>wenig Licht, schnelle Ernte</translation>
</message>
<message>
<source>typical, from memory; fresh weight rises over 100-600 µmol/m²/s for 16 h (C. Jones-Baumgardt et al. (2019), HortScience 54, 1168-1174, range cited from memory).</source>
<translation>üblich, aus dem Gedächtnis; das Frischgewicht steigt über 100-600 µmol/m²/s für 16 h (C. Jones-Baumgardt et al. (2019), HortScience 54, 1168-1174, Spanne aus dem Gedächtnis zitiert).</translation>
</message>
<message>
<source>Kale and chard</source>
<translation>Grünkohl und Mangold</translation>
</message>
<message>
<source>Tomato</source>
<translation>Tomate</translation>
</message>
<message>
<source>young plants</source>
<translation>junge Pflanzen</translation>
</message>
<message>
<source>Typical, from memory, for closed transplant rooms; compare Hwang et al. (2020), Sustainability 12, 9939.</source>
<translation>Üblich, aus dem Gedächtnis, für geschlossene Anzuchträume; vergleiche Hwang et al. (2020), Sustainability 12, 9939.</translation>
</message>
<message>
<source>fruiting</source>
<translation>Fruchtbildung</translation>
</message>
<message>
<source>Published, quoted second-hand: fruiting vegetables 20-25 (C. Gómez, University of Florida, quoted second-hand); tomato 20-30, source not traced.</source>
<translation>Veröffentlicht, aus zweiter Hand zitiert: Fruchtgemüse 20-25 (C. Gómez, University of Florida, aus zweiter Hand zitiert); Tomate 20-30, Quelle nicht ermittelt.</translation>
</message>
<message>
<source>Leaves are harmed by light around the clock: keep at least 4-6 h dark.</source>
<translation>Licht rund um die Uhr schadet den Blättern: mindestens 4-6 h dunkel halten.</translation>
</message>
<message>
<source>Pepper</source>
<translation>Paprika</translation>
</message>
<message>
<source>Published, quoted second-hand: fruiting vegetables 20-25 (C. Gómez, University of Florida, quoted second-hand). Upper end: typical, from memory.</source>
<translation>Veröffentlicht, aus zweiter Hand zitiert: Fruchtgemüse 20-25 (C. Gómez, University of Florida, aus zweiter Hand zitiert). Oberes Ende: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Cucumber</source>
<translation>Gurke</translation>
</message>
<message>
<source>Strawberry</source>
<translation>Erdbeere</translation>
</message>
<message>
<source>fruiting, least light</source>
<translation>Fruchtbildung, am wenigsten Licht</translation>
</message>
<message>
<source>Published: Ohio State University, Indoor Berry, Photosynthetic lighting: at least 10-12. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: Ohio State University, Indoor Berry, Photosynthetic lighting: mindestens 10-12. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Published: Ohio State University, Indoor Berry, Photosynthetic lighting: best 20-25, stress above 30. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: Ohio State University, Indoor Berry, Photosynthetic lighting: am besten 20-25, Stress über 30. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>House plants (foliage)</source>
<translation>Zimmerpflanzen (Blattschmuck)</translation>
</message>
<message>
<source>foliage</source>
<translation>Blattschmuck</translation>
</message>
<message>
<source>Published: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 4-6. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 4-6. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Shade plants</source>
<translation>Schattenpflanzen</translation>
</message>
<message>
<source>growing</source>
<translation>Wachstum</translation>
</message>
<message>
<source>Published: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 6-8. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 6-8. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Plants of part shade</source>
<translation>Halbschattenpflanzen</translation>
</message>
<message>
<source>Published: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 10-12. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 10-12. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Plants of full sun</source>
<translation>Sonnenpflanzen</translation>
</message>
<message>
<source>growing, flowering, fruiting</source>
<translation>Wachstum, Blüte, Frucht</translation>
</message>
<message>
<source>Published: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 14-20. Photoperiod: typical, from memory.</source>
<translation>Veröffentlicht: J. Ebba, University of New Hampshire Extension, Optimizing plant growth with indoor lighting (Q&amp;A): 14-20. Beleuchtungsdauer: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Ferns</source>
<translation>Farne</translation>
</message>
<message>
<source>Moth orchid (Phalaenopsis)</source>
<translation>Schmetterlingsorchidee (Phalaenopsis)</translation>
</message>
<message>
<source>growing leaves</source>
<translation>Blattwachstum</translation>
</message>
<message>
<source>Does not bear strong light.</source>
<translation>Verträgt kein starkes Licht.</translation>
</message>
<message>
<source>flowering</source>
<translation>Blüte</translation>
</message>
<message>
<source>African violet</source>
<translation>Usambaraveilchen</translation>
</message>
<message>
<source>Typical, from memory; 4-6 mol/m²/d is quoted second-hand, source not traced.</source>
<translation>Üblich, aus dem Gedächtnis; 4-6 mol/m²/d wird aus zweiter Hand zitiert, Quelle nicht ermittelt.</translation>
</message>
<message>
<source>Succulents and cacti</source>
<translation>Sukkulenten und Kakteen</translation>
</message>
<message>
<source>Generic lamps, no makes: body, angular profile, photon flux 400-700 nm and electrical power. Lamp data of the same kind differ by tens of per cent; enter the maker's values where they are known. beam_uncertainty_deg is how far the beam angle may be off: common practice, no source; for tables from memory it is not stated.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>LED board 24 × 24 cm, 50 W</source>
<translation>LED-Paneel 24 × 24 cm, 50 W</translation>
</message>
<message>
<source>Typical, from memory: 2.4 µmol/J, inside the 1.9-3.2 of plant LED lamps; minimum listings of 1.9 and 2.3 and a limit of 3.4 for white with red are published (DLC Horticultural Technical Requirements V2.0 and V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Hours to 90 %: 36,000, the least that is asked of listed plant lamps (Q90, the same requirements, from memory); one that is not listed may fade sooner.</source>
<translation>Üblich, aus dem Gedächtnis: 2,4 µmol/J, innerhalb der 1,9-3,2 von Pflanzen-LED-Lampen; veröffentlicht sind Mindestwerte von 1,9 und 2,3 und eine Grenze von 3,4 für Weiß mit Rot (DLC Horticultural Technical Requirements V2.0 und V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Stunden bis 90 %: 36.000, das Mindeste, was von gelisteten Pflanzenlampen verlangt wird (Q90, dieselben Anforderungen, aus dem Gedächtnis); eine nicht gelistete kann schneller nachlassen.</translation>
</message>
<message>
<source>A maker's measured photon flux is better than this entry; enter it where it is known.</source>
<translation>Ein vom Hersteller gemessener Photonenfluss ist besser als dieser Eintrag; wo er bekannt ist, eingeben.</translation>
</message>
<message>
<source>LED board 30 × 30 cm, 100 W</source>
<translation>LED-Paneel 30 × 30 cm, 100 W</translation>
</message>
<message>
<source>Typical, from memory: 2.6 µmol/J, inside the 1.9-3.2 of plant LED lamps; minimum listings of 1.9 and 2.3 and a limit of 3.4 for white with red are published (DLC Horticultural Technical Requirements V2.0 and V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Hours to 90 %: 36,000, the least that is asked of listed plant lamps (Q90, the same requirements, from memory); one that is not listed may fade sooner.</source>
<translation>Üblich, aus dem Gedächtnis: 2,6 µmol/J, innerhalb der 1,9-3,2 von Pflanzen-LED-Lampen; veröffentlicht sind Mindestwerte von 1,9 und 2,3 und eine Grenze von 3,4 für Weiß mit Rot (DLC Horticultural Technical Requirements V2.0 und V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Stunden bis 90 %: 36.000, das Mindeste, was von gelisteten Pflanzenlampen verlangt wird (Q90, dieselben Anforderungen, aus dem Gedächtnis); eine nicht gelistete kann schneller nachlassen.</translation>
</message>
<message>
<source>LED board 45 × 45 cm, 240 W</source>
<translation>LED-Paneel 45 × 45 cm, 240 W</translation>
</message>
<message>
<source>Typical, from memory: 2.7 µmol/J, inside the 1.9-3.2 of plant LED lamps; minimum listings of 1.9 and 2.3 and a limit of 3.4 for white with red are published (DLC Horticultural Technical Requirements V2.0 and V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Hours to 90 %: 36,000, the least that is asked of listed plant lamps (Q90, the same requirements, from memory); one that is not listed may fade sooner.</source>
<translation>Üblich, aus dem Gedächtnis: 2,7 µmol/J, innerhalb der 1,9-3,2 von Pflanzen-LED-Lampen; veröffentlicht sind Mindestwerte von 1,9 und 2,3 und eine Grenze von 3,4 für Weiß mit Rot (DLC Horticultural Technical Requirements V2.0 und V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Stunden bis 90 %: 36.000, das Mindeste, was von gelisteten Pflanzenlampen verlangt wird (Q90, dieselben Anforderungen, aus dem Gedächtnis); eine nicht gelistete kann schneller nachlassen.</translation>
</message>
<message>
<source>LED bar 60 cm, 20 W</source>
<translation>LED-Leiste 60 cm, 20 W</translation>
</message>
<message>
<source>Typical, from memory: 2.1 µmol/J, inside the 1.9-3.2 of plant LED lamps; minimum listings of 1.9 and 2.3 and a limit of 3.4 for white with red are published (DLC Horticultural Technical Requirements V2.0 and V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Hours to 90 %: 36,000, the least that is asked of listed plant lamps (Q90, the same requirements, from memory); one that is not listed may fade sooner.</source>
<translation>Üblich, aus dem Gedächtnis: 2,1 µmol/J, innerhalb der 1,9-3,2 von Pflanzen-LED-Lampen; veröffentlicht sind Mindestwerte von 1,9 und 2,3 und eine Grenze von 3,4 für Weiß mit Rot (DLC Horticultural Technical Requirements V2.0 und V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Stunden bis 90 %: 36.000, das Mindeste, was von gelisteten Pflanzenlampen verlangt wird (Q90, dieselben Anforderungen, aus dem Gedächtnis); eine nicht gelistete kann schneller nachlassen.</translation>
</message>
<message>
<source>The light leaves over 55 cm of the bar's 60. A maker's measured photon flux is better than this entry; enter it where it is known.</source>
<translation>Das Licht tritt auf 55 der 60 cm der Leiste aus. Ein vom Hersteller gemessener Photonenfluss ist besser als dieser Eintrag; wo er bekannt ist, eingeben.</translation>
</message>
<message>
<source>LED bar 90 cm, 30 W</source>
<translation>LED-Leiste 90 cm, 30 W</translation>
</message>
<message>
<source>Typical, from memory: 2.2 µmol/J, inside the 1.9-3.2 of plant LED lamps; minimum listings of 1.9 and 2.3 and a limit of 3.4 for white with red are published (DLC Horticultural Technical Requirements V2.0 and V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Hours to 90 %: 36,000, the least that is asked of listed plant lamps (Q90, the same requirements, from memory); one that is not listed may fade sooner.</source>
<translation>Üblich, aus dem Gedächtnis: 2,2 µmol/J, innerhalb der 1,9-3,2 von Pflanzen-LED-Lampen; veröffentlicht sind Mindestwerte von 1,9 und 2,3 und eine Grenze von 3,4 für Weiß mit Rot (DLC Horticultural Technical Requirements V2.0 und V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Stunden bis 90 %: 36.000, das Mindeste, was von gelisteten Pflanzenlampen verlangt wird (Q90, dieselben Anforderungen, aus dem Gedächtnis); eine nicht gelistete kann schneller nachlassen.</translation>
</message>
<message>
<source>The light leaves over 85 cm of the bar's 90. A maker's measured photon flux is better than this entry; enter it where it is known.</source>
<translation>Das Licht tritt auf 85 der 90 cm der Leiste aus. Ein vom Hersteller gemessener Photonenfluss ist besser als dieser Eintrag; wo er bekannt ist, eingeben.</translation>
</message>
<message>
<source>Four LED bars, 60 × 60 cm, 200 W</source>
<translation>Vier LED-Leisten, 60 × 60 cm, 200 W</translation>
</message>
<message>
<source>Six LED bars, 110 × 105 cm, 480 W</source>
<translation>Sechs LED-Leisten, 110 × 105 cm, 480 W</translation>
</message>
<message>
<source>Typical, from memory: 2.8 µmol/J, inside the 1.9-3.2 of plant LED lamps; minimum listings of 1.9 and 2.3 and a limit of 3.4 for white with red are published (DLC Horticultural Technical Requirements V2.0 and V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Hours to 90 %: 36,000, the least that is asked of listed plant lamps (Q90, the same requirements, from memory); one that is not listed may fade sooner.</source>
<translation>Üblich, aus dem Gedächtnis: 2,8 µmol/J, innerhalb der 1,9-3,2 von Pflanzen-LED-Lampen; veröffentlicht sind Mindestwerte von 1,9 und 2,3 und eine Grenze von 3,4 für Weiß mit Rot (DLC Horticultural Technical Requirements V2.0 und V3.0; P. Kusuma, P. M. Pattison, B. Bugbee (2020), From physics to fixtures to food, Hortic. Res. 7:56). Stunden bis 90 %: 36.000, das Mindeste, was von gelisteten Pflanzenlampen verlangt wird (Q90, dieselben Anforderungen, aus dem Gedächtnis); eine nicht gelistete kann schneller nachlassen.</translation>
</message>
<message>
<source>LED ceiling panel 60 × 60 cm, 36 W</source>
<translation>LED-Deckenpaneel 60 × 60 cm, 36 W</translation>
</message>
<message>
<source>Calculated: 110 lm/W over about 69 lm per µmol/s for white LEDs (CIE 015:2018, LED-B illuminants) is 1.6 µmol/J. Lumens per watt: typical, from memory.</source>
<translation>Berechnet: 110 lm/W geteilt durch etwa 69 lm je µmol/s bei weißen LEDs (CIE 015:2018, LED-B-Lichtarten) ergibt 1,6 µmol/J. Lumen je Watt: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>An ordinary room light. Not made for damp places unless it says so.</source>
<translation>Eine gewöhnliche Zimmerleuchte. Nicht für feuchte Räume, wenn es nicht draufsteht.</translation>
</message>
<message>
<source>LED strip light 30 cm, 10 W</source>
<translation>LED-Unterbauleuchte 30 cm, 10 W</translation>
</message>
<message>
<source>Calculated: 100 lm/W over about 69 lm per µmol/s for white LEDs (CIE 015:2018, LED-B illuminants) is 1.45 µmol/J. Lumens per watt: typical, from memory.</source>
<translation>Berechnet: 100 lm/W geteilt durch etwa 69 lm je µmol/s bei weißen LEDs (CIE 015:2018, LED-B-Lichtarten) ergibt 1,45 µmol/J. Lumen je Watt: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>An ordinary under-shelf light.</source>
<translation>Eine gewöhnliche Leuchte für unter Regalbretter.</translation>
</message>
<message>
<source>Household LED bulb, 10 W</source>
<translation>Haushalts-LED-Birne, 10 W</translation>
</message>
<message>
<source>Calculated: 100 lm/W over about 69 lm per µmol/s for white LEDs (CIE 015:2018, LED-B illuminants) is 1.45 µmol/J. Lumens per watt: typical, from memory. Profile: typical of a frosted bulb, from memory.</source>
<translation>Berechnet: 100 lm/W geteilt durch etwa 69 lm je µmol/s bei weißen LEDs (CIE 015:2018, LED-B-Lichtarten) ergibt 1,45 µmol/J. Lumen je Watt: üblich, aus dem Gedächtnis. Profil: üblich für eine matte Birne, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Base up, bare. Half the light goes sideways and up: the lining decides what comes of it.</source>
<translation>Sockel oben, ohne Schirm. Die Hälfte des Lichts geht zur Seite und nach oben: Was daraus wird, entscheidet die Auskleidung.</translation>
</message>
<message>
<source>LED spot 38°, 6 W</source>
<translation>LED-Spot 38°, 6 W</translation>
</message>
<message>
<source>Calculated: 93 lm/W over about 69 lm per µmol/s for white LEDs (CIE 015:2018, LED-B illuminants) is 1.35 µmol/J. Lumens per watt: typical, from memory. cos^12.4 has a half-peak cone of 38°.</source>
<translation>Berechnet: 93 lm/W geteilt durch etwa 69 lm je µmol/s bei weißen LEDs (CIE 015:2018, LED-B-Lichtarten) ergibt 1,35 µmol/J. Lumen je Watt: üblich, aus dem Gedächtnis. cos^12.4 hat einen Kegel halber Spitzenstärke von 38°.</translation>
</message>
<message>
<source>A pool of light: even only from far away.</source>
<translation>Ein Lichtkegel: gleichmäßig nur aus großer Entfernung.</translation>
</message>
<message>
<source>T5 fluorescent pair 55 cm, 2 × 24 W</source>
<translation>T5-Leuchtstofflampe, zwei Röhren 55 cm, 2 × 24 W</translation>
</message>
<message>
<source>Published efficacy: J. A. Nelson, B. Bugbee (2014), Economic analysis of greenhouse lighting, PLoS ONE 9(6) e99010 (fluorescent 0.95 µmol/J). 54 W with ballast: typical, from memory.</source>
<translation>Effizienz veröffentlicht: J. A. Nelson, B. Bugbee (2014), Economic analysis of greenhouse lighting, PLoS ONE 9(6) e99010 (Leuchtstofflampe 0,95 µmol/J). 54 W mit Vorschaltgerät: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>With a white tray above the tubes, taken as an even glow downward. Tubes hold mercury: recycle them.</source>
<translation>Mit weißer Wanne über den Röhren, als gleichmäßiges Leuchten nach unten genommen. Röhren enthalten Quecksilber: zur Sammelstelle bringen.</translation>
</message>
<message>
<source>T5 fluorescent, four tubes 115 cm, 4 × 54 W</source>
<translation>T5-Leuchtstofflampe, vier Röhren 115 cm, 4 × 54 W</translation>
</message>
<message>
<source>Published efficacy: J. A. Nelson, B. Bugbee (2014), Economic analysis of greenhouse lighting, PLoS ONE 9(6) e99010 (fluorescent 0.95 µmol/J). 230 W with ballast: typical, from memory.</source>
<translation>Effizienz veröffentlicht: J. A. Nelson, B. Bugbee (2014), Economic analysis of greenhouse lighting, PLoS ONE 9(6) e99010 (Leuchtstofflampe 0,95 µmol/J). 230 W mit Vorschaltgerät: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Compact fluorescent lamp, 30 W</source>
<translation>Kompaktleuchtstofflampe, 30 W</translation>
</message>
<message>
<source>Typical, from memory: 0.9 µmol/J, the lower end of fluorescent lamps; profile from memory.</source>
<translation>Üblich, aus dem Gedächtnis: 0,9 µmol/J, das untere Ende der Leuchtstofflampen; Profil aus dem Gedächtnis.</translation>
</message>
<message>
<source>Bare, base up: most of it leaves sideways. Holds mercury: recycle it.</source>
<translation>Ohne Schirm, Sockel oben: Das meiste geht zur Seite. Enthält Quecksilber: zur Sammelstelle bringen.</translation>
</message>
<message>
<source>High-pressure sodium, 250 W with reflector</source>
<translation>Natriumdampf-Hochdrucklampe, 250 W mit Reflektor</translation>
</message>
<message>
<source>Published efficacy: J. A. Nelson, B. Bugbee (2014), Economic analysis of greenhouse lighting, PLoS ONE 9(6) e99010 (mogul-base high-pressure sodium 1.02 µmol/J). 280 W with ballast and the profile: typical, from memory.</source>
<translation>Effizienz veröffentlicht: J. A. Nelson, B. Bugbee (2014), Economic analysis of greenhouse lighting, PLoS ONE 9(6) e99010 (Natriumdampf-Hochdrucklampe mit Mogul-Sockel 1,02 µmol/J). 280 W mit Vorschaltgerät und das Profil: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Very hot: the lamp and its reflector need wide clearances and moving air.</source>
<translation>Sehr heiß: Lampe und Reflektor brauchen weite Abstände und bewegte Luft.</translation>
</message>
<message>
<source>Generic linings with total reflectance over 400-700 nm, the specular share of the reflected light, the range samples may show, and where the numbers come from. A sample of your own, measured, is always better.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>White board (melamine or laminate)</source>
<translation>Weiße Platte (Melamin oder Laminat)</translation>
</message>
<message>
<source>Typical, from memory.</source>
<translation>Üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Stiff, flat and easy to wipe. About 5 % of the incident light leaves as gloss.</source>
<translation>Steif, flach und leicht abzuwischen. Etwa 5 % des auftreffenden Lichts gehen als Glanz ab.</translation>
</message>
<message>
<source>Matt white wall paint</source>
<translation>Mattweiße Wandfarbe</translation>
</message>
<message>
<source>Published: photometric table in a lamp maker's on-line lighting encyclopaedia (white 0.8, weighted for the eye, not for 400-700 nm); SLL Code for Lighting, approximate reflectances (white emulsion on plaster 0.8, cited from memory). Upper range end, fresh brilliant white: typical, from memory.</source>
<translation>Veröffentlicht: photometrische Tabelle in der Online-Lichtenzyklopädie eines Lampenherstellers (Weiß 0,8, für das Auge gewichtet, nicht für 400-700 nm); SLL Code for Lighting, approximate reflectances (weiße Dispersionsfarbe auf Putz 0,8, aus dem Gedächtnis zitiert). Oberes Ende der Spanne, frisch und strahlend weiß: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Titanium dioxide absorbs below about 420 nm. Several coats cover better than one.</source>
<translation>Titandioxid absorbiert unter etwa 420 nm. Mehrere Anstriche decken besser als einer.</translation>
</message>
<message>
<source>White/black film, opaque, white side</source>
<translation>Weiß-schwarze Folie, deckend, weiße Seite</translation>
</message>
<message>
<source>New and clean. Thin film greys, because part of the light ends in the black layer.</source>
<translation>Neu und sauber. Dünne Folie wirkt grau, weil ein Teil des Lichts in der schwarzen Schicht endet.</translation>
</message>
<message>
<source>White/black film, thin or aged, white side</source>
<translation>Weiß-schwarze Folie, dünn oder gealtert, weiße Seite</translation>
</message>
<message>
<source>Typical, from memory; an orchard floor film of this kind is reported at 0.35 (attributed to Z. Ju, Y. Duan, Z. Ju (1999), Scientia Horticulturae 82, 47-56, quoted second-hand).</source>
<translation>Üblich, aus dem Gedächtnis; für eine solche Obstgarten-Bodenfolie wird 0,35 berichtet (Z. Ju, Y. Duan, Z. Ju (1999), Scientia Horticulturae 82, 47-56 zugeschrieben, aus zweiter Hand zitiert).</translation>
</message>
<message>
<source>The black layer shows through: measure rather than guess.</source>
<translation>Die schwarze Schicht scheint durch: lieber messen als raten.</translation>
</message>
<message>
<source>Aluminium foil, flat, shiny side out</source>
<translation>Alufolie, glatt, glänzende Seite außen</translation>
</message>
<message>
<source>Published: V. Pozzobon, W. Levasseur, K.-V. Do, B. Palpant, P. Perré (2020), Household aluminum foil matte and bright side reflectivity measurements: Application to a photobioreactor light concentrator design, Biotechnology Reports 25, e00399 (total about 0.86 in the visible, the same on both sides). Lower range end: M. Janecek, W. W. Moses (2008), Optical reflectance measurements for commonly used reflectors, IEEE Trans. Nucl. Sci. 55(4), 2432-2437 (about 0.79 at 440 nm, cited from memory). The specular share is a guess, ±0.15.</source>
<translation>Veröffentlicht: V. Pozzobon, W. Levasseur, K.-V. Do, B. Palpant, P. Perré (2020), Household aluminum foil matte and bright side reflectivity measurements: Application to a photobioreactor light concentrator design, Biotechnology Reports 25, e00399 (insgesamt etwa 0,86 im Sichtbaren, auf beiden Seiten gleich). Unteres Ende der Spanne: M. Janecek, W. W. Moses (2008), Optical reflectance measurements for commonly used reflectors, IEEE Trans. Nucl. Sci. 55(4), 2432-2437 (etwa 0,79 bei 440 nm, aus dem Gedächtnis zitiert). Der Spiegelanteil ist geraten, ±0,15.</translation>
</message>
<message>
<source>Both sides return the same total; the shiny side sends more of it on as a mirror does. Tables without a source that give foil 55-65 % are contradicted by the measurement.</source>
<translation>Beide Seiten werfen insgesamt gleich viel zurück; die glänzende schickt mehr davon wie ein Spiegel weiter. Tabellen ohne Quelle, die Folie 55-65 % geben, widerspricht die Messung.</translation>
</message>
<message>
<source>Aluminium foil, flat, matt side out</source>
<translation>Alufolie, glatt, matte Seite außen</translation>
</message>
<message>
<source>Both sides return the same total; the matt side scatters more of it. Tables without a source that give foil 55-65 % are contradicted by the measurement.</source>
<translation>Beide Seiten werfen insgesamt gleich viel zurück; die matte streut mehr davon. Tabellen ohne Quelle, die Folie 55-65 % geben, widerspricht die Messung.</translation>
</message>
<message>
<source>Aluminium foil, creased</source>
<translation>Alufolie, geknittert</translation>
</message>
<message>
<source>Typical, from memory: flat foil (0.86) less what it takes up where light meets it more than once between creases; the wrinkle itself takes nothing.</source>
<translation>Üblich, aus dem Gedächtnis: glatte Folie (0,86) abzüglich dessen, was sie schluckt, wo Licht zwischen Knittern mehr als einmal auftrifft; der Knitter selbst nimmt nichts.</translation>
</message>
<message>
<source>Smooth it onto a board if it can be done: creases trap light and make bright streaks.</source>
<translation>Wenn möglich auf einer Platte glattstreichen: Knitter fangen Licht und machen helle Streifen.</translation>
</message>
<message>
<source>Aluminised polyester film, flat</source>
<translation>Aluminisierte Polyesterfolie, glatt</translation>
</message>
<message>
<source>Calculated from published data: optical constants of A. D. Rakić (1995), Appl. Opt. 34, 4755-4767, give 0.91 for the bare metal and 0.87 seen through polyester; real films 0.87-0.90 from memory.</source>
<translation>Aus veröffentlichten Daten berechnet: Optische Konstanten von A. D. Rakić (1995), Appl. Opt. 34, 4755-4767, ergeben 0,91 für das blanke Metall und 0,87 durch Polyester gesehen; wirkliche Folien 0,87-0,90 aus dem Gedächtnis.</translation>
</message>
<message>
<source>Tables without a source that promise 90-95 % exceed what the metal itself can return.</source>
<translation>Tabellen ohne Quelle, die 90-95 % versprechen, übersteigen, was das Metall selbst zurückwerfen kann.</translation>
</message>
<message>
<source>Rescue blanket, creased</source>
<translation>Rettungsdecke, geknittert</translation>
</message>
<message>
<source>Typical, from memory. That single sheets let 1-8 % of visible light through is published: M. Isser, H. Kranebitter, E. Kühn, W. Lederer (2019), Sci. Rep. 9, High-energy visible light transparency and ultraviolet ray transmission of metallized rescue sheets.</source>
<translation>Üblich, aus dem Gedächtnis. Dass einzelne Lagen 1-8 % des sichtbaren Lichts durchlassen, ist veröffentlicht: M. Isser, H. Kranebitter, E. Kühn, W. Lederer (2019), Sci. Rep. 9, High-energy visible light transparency and ultraviolet ray transmission of metallized rescue sheets.</translation>
</message>
<message>
<source>Very thin: some light passes through it, and every crease shows in the map.</source>
<translation>Sehr dünn: Etwas Licht geht hindurch, und jeder Knitter zeigt sich in der Karte.</translation>
</message>
<message>
<source>Metallised film, wrinkled or weathered</source>
<translation>Metallisierte Folie, geknittert oder verwittert</translation>
</message>
<message>
<source>Published, quoted second-hand: metallised orchard floor film 60 %, foil film 75 % of 400-700 nm, measured in the field (attributed to Z. Ju, Y. Duan, Z. Ju (1999), Scientia Horticulturae 82, 47-56). The specular share is a guess.</source>
<translation>Veröffentlicht, aus zweiter Hand zitiert: metallisierte Obstgarten-Bodenfolie 60 %, Alufolie 75 % von 400-700 nm, im Feld gemessen (Z. Ju, Y. Duan, Z. Ju (1999), Scientia Horticulturae 82, 47-56 zugeschrieben). Der Spiegelanteil ist geraten.</translation>
</message>
<message>
<source>Fresh flat film returns far more.</source>
<translation>Frische glatte Folie wirft weit mehr zurück.</translation>
</message>
<message>
<source>Aluminium sheet, bright</source>
<translation>Aluminiumblech, blank</translation>
</message>
<message>
<source>Published: E. W. Spisz, A. J. Weigand, R. L. Bowman, J. R. Jack (1969), NASA TN D-5353, Table II(a) (clean metal, mean 400-700 nm 0.866); SLL Code for Lighting, approximate reflectances (aluminium 0.65, cited from memory). The value between the two and the specular share are guesses.</source>
<translation>Veröffentlicht: E. W. Spisz, A. J. Weigand, R. L. Bowman, J. R. Jack (1969), NASA TN D-5353, Table II(a) (sauberes Metall, Mittel 400-700 nm 0,866); SLL Code for Lighting, approximate reflectances (Aluminium 0,65, aus dem Gedächtnis zitiert). Der Wert zwischen beiden und der Spiegelanteil sind geraten.</translation>
</message>
<message>
<source>Oxide and dirt cost light; weathered roofing sheet is near 0.5.</source>
<translation>Oxid und Schmutz kosten Licht; verwittertes Dachblech liegt bei etwa 0,5.</translation>
</message>
<message>
<source>Glass mirror</source>
<translation>Glasspiegel</translation>
</message>
<message>
<source>Heavy and breakable: fix it with what the maker names. Turns a wall into a second lamp.</source>
<translation>Schwer und zerbrechlich: mit dem befestigen, was der Hersteller nennt. Macht aus einer Wand eine zweite Lampe.</translation>
</message>
<message>
<source>Barium sulphate coating</source>
<translation>Bariumsulfat-Beschichtung</translation>
</message>
<message>
<source>Published: S. D. Noble, A. Boeré, T. Kondratowicz, T. G. Crowe, R. B. Brown, D. A. Naylor (2008), Characterization of a low-cost diffuse reflectance coating, Can. J. Remote Sensing 34(2), 68-76 (mean 400-1600 nm 0.949, minimum 0.864 at 400 nm). The 400-700 nm value is read from these two.</source>
<translation>Veröffentlicht: S. D. Noble, A. Boeré, T. Kondratowicz, T. G. Crowe, R. B. Brown, D. A. Naylor (2008), Characterization of a low-cost diffuse reflectance coating, Can. J. Remote Sensing 34(2), 68-76 (Mittel 400-1600 nm 0,949, Minimum 0,864 bei 400 nm). Der Wert für 400-700 nm ist aus beiden abgelesen.</translation>
</message>
<message>
<source>Chalky: rubs off, and rubbing makes it shine.</source>
<translation>Kreidig: reibt sich ab, und Reiben macht glänzend.</translation>
</message>
<message>
<source>PTFE sheet, 5-10 mm</source>
<translation>PTFE-Platte, 5-10 mm</translation>
</message>
<message>
<source>Published: S. Ghosh et al. (NEXT collaboration, 2020), Dependence of polytetrafluoroethylene reflectance on thickness at visible and ultraviolet wavelengths in air, JINST 15, P11031 (0.925-0.945 at 450 nm).</source>
<translation>Veröffentlicht: S. Ghosh et al. (NEXT collaboration, 2020), Dependence of polytetrafluoroethylene reflectance on thickness at visible and ultraviolet wavelengths in air, JINST 15, P11031 (0,925-0,945 bei 450 nm).</translation>
</message>
<message>
<source>Thinner sheet lets light through; a mirror behind it brings the loss back.</source>
<translation>Dünnere Platten lassen Licht durch; ein Spiegel dahinter holt den Verlust zurück.</translation>
</message>
<message>
<source>Expanded PTFE sheet, backed</source>
<translation>Gereckte PTFE-Folie, hinterlegt</translation>
</message>
<message>
<source>Typical, from memory; compare M. Janecek (2012), Reflectivity spectra for commonly used reflectors, IEEE Trans. Nucl. Sci. 59(3), 490-497 (0.5 mm or more for above 0.95 at 380-500 nm).</source>
<translation>Üblich, aus dem Gedächtnis; vergleiche M. Janecek (2012), Reflectivity spectra for commonly used reflectors, IEEE Trans. Nucl. Sci. 59(3), 490-497 (0,5 mm oder mehr für über 0,95 bei 380-500 nm).</translation>
</message>
<message>
<source>As white as a lining gets. Soft: fix it to a board.</source>
<translation>So weiß, wie eine Auskleidung werden kann. Weich: auf einer Platte befestigen.</translation>
</message>
<message>
<source>White glazed tile</source>
<translation>Weiße glasierte Fliese</translation>
</message>
<message>
<source>Published: photometric table in a lamp maker's on-line lighting encyclopaedia (white tile 0.7, weighted for the eye, not for 400-700 nm). Range and gloss: typical, from memory.</source>
<translation>Veröffentlicht: photometrische Tabelle in der Online-Lichtenzyklopädie eines Lampenherstellers (weiße Fliese 0,7, für das Auge gewichtet, nicht für 400-700 nm). Spanne und Glanz: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Cleans easily; the joints are darker.</source>
<translation>Leicht zu reinigen; die Fugen sind dunkler.</translation>
</message>
<message>
<source>Plaster or plasterboard, bare</source>
<translation>Putz oder Gipskarton, roh</translation>
</message>
<message>
<source>Published: photometric table in a lamp maker's on-line lighting encyclopaedia (plaster 0.8, weighted for the eye, not for 400-700 nm); SLL Code for Lighting, approximate reflectances (plasterboard 0.8, cited from memory).</source>
<translation>Veröffentlicht: photometrische Tabelle in der Online-Lichtenzyklopädie eines Lampenherstellers (Putz 0,8, für das Auge gewichtet, nicht für 400-700 nm); SLL Code for Lighting, approximate reflectances (Gipskarton 0,8, aus dem Gedächtnis zitiert).</translation>
</message>
<message>
<source>Soaks up water and may grow mould in a damp space.</source>
<translation>Saugt Wasser auf und kann in einem feuchten Raum schimmeln.</translation>
</message>
<message>
<source>White survey board or card</source>
<translation>Weißes Lochbrett oder weißer Karton</translation>
</message>
<message>
<source>Published, cited from memory: SLL Code for Lighting, approximate reflectances (white paper 0.8). Range: typical, from memory.</source>
<translation>Veröffentlicht, aus dem Gedächtnis zitiert: SLL Code for Lighting, approximate reflectances (weißes Papier 0,8). Spanne: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>For laying a measuring grid on; its own reflectance is part of the reading.</source>
<translation>Um ein Messraster darauf zu legen; sein eigener Reflexionsgrad ist Teil des Messwerts.</translation>
</message>
<message>
<source>Bare plywood (birch or softwood)</source>
<translation>Rohes Sperrholz (Birke oder Nadelholz)</translation>
</message>
<message>
<source>Published: photometric table in a lamp maker's on-line lighting encyclopaedia (maple or birch 0.6, weighted for the eye, not for 400-700 nm); SLL Code for Lighting, approximate reflectances (beech, birch, maple 0.5, cited from memory). Value and range: typical, from memory.</source>
<translation>Veröffentlicht: photometrische Tabelle in der Online-Lichtenzyklopädie eines Lampenherstellers (Ahorn oder Birke 0,6, für das Auge gewichtet, nicht für 400-700 nm); SLL Code for Lighting, approximate reflectances (Buche, Birke, Ahorn 0,5, aus dem Gedächtnis zitiert). Wert und Spanne: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Returns far less blue (about 0.35) than red (about 0.65).</source>
<translation>Wirft weit weniger Blau (etwa 0,35) als Rot (etwa 0,65) zurück.</translation>
</message>
<message>
<source>Dark wood (oak, walnut)</source>
<translation>Dunkles Holz (Eiche, Nussbaum)</translation>
</message>
<message>
<source>Published: photometric table in a lamp maker's on-line lighting encyclopaedia (dark oak or walnut 0.2, weighted for the eye, not for 400-700 nm). Range: typical, from memory.</source>
<translation>Veröffentlicht: photometrische Tabelle in der Online-Lichtenzyklopädie eines Lampenherstellers (dunkle Eiche oder Nussbaum 0,2, für das Auge gewichtet, nicht für 400-700 nm). Spanne: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>A cabinet as it comes; nearly any lining is a gain.</source>
<translation>Ein Schrank, wie er kommt; fast jede Auskleidung ist ein Gewinn.</translation>
</message>
<message>
<source>Brown corrugated cardboard</source>
<translation>Braune Wellpappe</translation>
</message>
<message>
<source>Returns little blue (about 0.2).</source>
<translation>Wirft wenig Blau zurück (etwa 0,2).</translation>
</message>
<message>
<source>Light grey paint</source>
<translation>Hellgraue Farbe</translation>
</message>
<message>
<source>Published: photometric table in a lamp maker's on-line lighting encyclopaedia (light grey 0.4, weighted for the eye, not for 400-700 nm). Range: typical, from memory.</source>
<translation>Veröffentlicht: photometrische Tabelle in der Online-Lichtenzyklopädie eines Lampenherstellers (Hellgrau 0,4, für das Auge gewichtet, nicht für 400-700 nm). Spanne: üblich, aus dem Gedächtnis.</translation>
</message>
<message>
<source>Concrete, bare</source>
<translation>Beton, roh</translation>
</message>
<message>
<source>Published: A. M. Baldridge et al. (2009), The ASTER spectral library version 2.0, Remote Sens. Environ. 113, 711-715, construction concrete, mean 400-700 nm computed as 0.318; photometric table in a lamp maker's on-line lighting encyclopaedia (concrete 0.3, weighted for the eye, not for 400-700 nm).</source>
<translation>Veröffentlicht: A. M. Baldridge et al. (2009), The ASTER spectral library version 2.0, Remote Sens. Environ. 113, 711-715, construction concrete, Mittel 400-700 nm berechnet als 0,318; photometrische Tabelle in der Online-Lichtenzyklopädie eines Lampenherstellers (Beton 0,3, für das Auge gewichtet, nicht für 400-700 nm).</translation>
</message>
<message>
<source>Red brick, bare</source>
<translation>Roter Ziegel, roh</translation>
</message>
<message>
<source>Published: photometric table in a lamp maker's on-line lighting encyclopaedia (red brick 0.2, weighted for the eye, not for 400-700 nm); SLL Code for Lighting, approximate reflectances (red brick 0.25, cited from memory).</source>
<translation>Veröffentlicht: photometrische Tabelle in der Online-Lichtenzyklopädie eines Lampenherstellers (roter Ziegel 0,2, für das Auge gewichtet, nicht für 400-700 nm); SLL Code for Lighting, approximate reflectances (roter Ziegel 0,25, aus dem Gedächtnis zitiert).</translation>
</message>
<message>
<source>Window pane, dark outside</source>
<translation>Fensterscheibe, draußen dunkel</translation>
</message>
<message>
<source>Calculated: two glass surfaces of index 1.52 at normal incidence return 8 %; double glazing about twice that. What passes through is lost.</source>
<translation>Berechnet: Zwei Glasflächen mit Brechzahl 1,52 werfen bei senkrechtem Einfall 8 % zurück; Doppelverglasung etwa doppelt so viel. Was hindurchgeht, ist verloren.</translation>
</message>
<message>
<source>Returns more at grazing angles than the value says.</source>
<translation>Wirft bei streifendem Einfall mehr zurück, als der Wert sagt.</translation>
</message>
<message>
<source>Matt black paint</source>
<translation>Mattschwarze Farbe</translation>
</message>
<message>
<source>For a photometric test: walls that return next to nothing.</source>
<translation>Für eine photometrische Prüfung: Wände, die fast nichts zurückwerfen.</translation>
</message>
<message>
<source>Black polyethylene film</source>
<translation>Schwarze Polyethylenfolie</translation>
</message>
<message>
<source>Typical, from memory: 0.04-0.05 diffuse and about 0.04 gloss.</source>
<translation>Üblich, aus dem Gedächtnis: 0,04-0,05 diffus und etwa 0,04 Glanz.</translation>
</message>
<message>
<source>Peat or potting mix, dry</source>
<translation>Torf oder Blumenerde, trocken</translation>
</message>
<message>
<source>Peat or potting mix, wet</source>
<translation>Torf oder Blumenerde, nass</translation>
</message>
<message>
<source>Typical, from memory; black loam is published at 0.051: A. M. Baldridge et al. (2009), Remote Sens. Environ. 113, 711-715, mean 400-700 nm computed.</source>
<translation>Üblich, aus dem Gedächtnis; Schwarzerde ist mit 0,051 veröffentlicht: A. M. Baldridge et al. (2009), Remote Sens. Environ. 113, 711-715, Mittel 400-700 nm berechnet.</translation>
</message>
<message>
<source>Generic spectra, relative power per nm. Models are shapes made by a formula to stand for a kind of lamp, measured on none; illuminants follow their published definitions. The spectrum of the lamp at hand, measured, is always better.</source>
<translatorcomment>not read by people</translatorcomment>
<translation />
</message>
<message>
<source>White LED, warm (about 3000 K)</source>
<translation>Weiße LED, warm (etwa 3000 K)</translation>
</message>
<message>
<source>Typical, a model: two Gaussians, blue at 451 nm and phosphor at 605 nm, chosen to come near CIE LED-B2 (CIE 015:2018), which gives 67.9 lx per µmol m⁻² s⁻¹.</source>
<translation>Üblich, ein Modell: zwei Gaußkurven, Blau bei 451 nm und Leuchtstoff bei 605 nm, nahe an CIE LED-B2 gewählt (CIE 015:2018), die 67,9 lx je µmol m⁻² s⁻¹ ergibt.</translation>
</message>
<message>
<source>Lamps of this kind differ: published illuminants of white LEDs run from 53 (violet pumped) to 73 lx per µmol m⁻² s⁻¹.</source>
<translation>Lampen dieser Art unterscheiden sich: Veröffentlichte Lichtarten weißer LEDs reichen von 53 (violett angeregt) bis 73 lx je µmol m⁻² s⁻¹.</translation>
</message>
<message>
<source>White LED, neutral (about 4000 K)</source>
<translation>Weiße LED, neutral (etwa 4000 K)</translation>
</message>
<message>
<source>Typical, a model: two Gaussians, blue at 448 nm and phosphor at 590 nm, chosen to come near CIE LED-B3 (CIE 015:2018), which gives 69.8 lx per µmol m⁻² s⁻¹.</source>
<translation>Üblich, ein Modell: zwei Gaußkurven, Blau bei 448 nm und Leuchtstoff bei 590 nm, nahe an CIE LED-B3 gewählt (CIE 015:2018), die 69,8 lx je µmol m⁻² s⁻¹ ergibt.</translation>
</message>
<message>
<source>White LED, cool (about 6500 K)</source>
<translation>Weiße LED, kühl (etwa 6500 K)</translation>
</message>
<message>
<source>Typical, a model: two Gaussians, blue at 452 nm and phosphor at 553 nm, chosen to come near CIE LED-B5 (CIE 015:2018), which gives 69.4 lx per µmol m⁻² s⁻¹.</source>
<translation>Üblich, ein Modell: zwei Gaußkurven, Blau bei 452 nm und Leuchtstoff bei 553 nm, nahe an CIE LED-B5 gewählt (CIE 015:2018), die 69,4 lx je µmol m⁻² s⁻¹ ergibt.</translation>
</message>
<message>
<source>White LED with deep red</source>
<translation>Weiße LED mit Tiefrot</translation>
</message>
<message>
<source>Typical, a model: the neutral white LED with a Gaussian at 660 nm (20 nm wide at half height) that adds three tenths to its photons.</source>
<translation>Üblich, ein Modell: die neutralweiße LED mit einer Gaußkurve bei 660 nm (20 nm breit auf halber Höhe), die ihren Photonen drei Zehntel hinzufügt.</translation>
</message>
<message>
<source>The share of red differs from lamp to lamp, and lux change strongly with it: the lamp's own spectrum is better.</source>
<translation>Der Rotanteil ist von Lampe zu Lampe verschieden, und die Lux hängen stark daran: Besser ist das eigene Spektrum der Lampe.</translation>
</message>
<message>
<source>Red and blue LED</source>
<translation>Rote und blaue LED</translation>
</message>
<message>
<source>Typical, a model: Gaussians at 450 and 660 nm, each 20 nm wide at half height, four fifths of the photons red.</source>
<translation>Üblich, ein Modell: Gaußkurven bei 450 und 660 nm, je 20 nm breit auf halber Höhe, vier Fünftel der Photonen rot.</translation>
</message>
<message>
<source>A lux meter is nearly blind to this light; use a quantum sensor.</source>
<translation>Ein Luxmeter ist für dieses Licht fast blind; einen Quantensensor nehmen.</translation>
</message>
<message>
<source>Red LED (660 nm)</source>
<translation>Rote LED (660 nm)</translation>
</message>
<message>
<source>Typical, a model: a Gaussian at 660 nm, 20 nm wide at half height.</source>
<translation>Üblich, ein Modell: eine Gaußkurve bei 660 nm, 20 nm breit auf halber Höhe.</translation>
</message>
<message>
<source>Blue LED (450 nm)</source>
<translation>Blaue LED (450 nm)</translation>
</message>
<message>
<source>Typical, a model: a Gaussian at 450 nm, 20 nm wide at half height.</source>
<translation>Üblich, ein Modell: eine Gaußkurve bei 450 nm, 20 nm breit auf halber Höhe.</translation>
</message>
<message>
<source>High-pressure sodium lamp</source>
<translation>Natriumdampf-Hochdrucklampe</translation>
</message>
<message>
<source>Typical, a model: Gaussians at the stronger lines with a broad base, chosen to come near CIE HP1 (CIE 015:2018), which gives 85.8 lx per µmol m⁻² s⁻¹.</source>
<translation>Üblich, ein Modell: Gaußkurven an den stärkeren Linien mit breitem Sockel, nahe an CIE HP1 gewählt (CIE 015:2018), die 85,8 lx je µmol m⁻² s⁻¹ ergibt.</translation>
</message>
<message>
<source>Published for such lamps: 82 lx per µmol m⁻² s⁻¹ (R. W. Thimijan, R. D. Heins (1983), HortScience 18, 818-822, quoted second-hand); double-ended lamps of today are given with 77.</source>
<translation>Für solche Lampen veröffentlicht: 82 lx je µmol m⁻² s⁻¹ (R. W. Thimijan, R. D. Heins (1983), HortScience 18, 818-822, aus zweiter Hand zitiert); zweiseitig gesockelte Lampen von heute werden mit 77 angegeben.</translation>
</message>
<message>
<source>Incandescent lamp (CIE illuminant A)</source>
<translation>Glühlampe (CIE-Normlichtart A)</translation>
</message>
<message>
<source>Published definition: CIE standard illuminant A, Planck's law at 2848 K with c₂ = 1.435e-2 m K (CIE 015:2018; ISO/CIE 11664-2).</source>
<translation>Veröffentlichte Festlegung: CIE-Normlichtart A, Plancksches Gesetz bei 2848 K mit c₂ = 1,435e-2 m K (CIE 015:2018; ISO/CIE 11664-2).</translation>
</message>
<message>
<source>Mostly far-red and heat.</source>
<translation>Überwiegend Dunkelrot und Wärme.</translation>
</message>
<message>
<source>Daylight (CIE illuminant D65)</source>
<translation>Tageslicht (CIE-Normlichtart D65)</translation>
</message>
<message>
<source>Published definition: the CIE formula for daylight at 6504 K with the components of D. B. Judd, D. L. MacAdam, G. Wyszecki (1964), J. Opt. Soc. Am. 54, 1031-1040 (CIE 015:2018).</source>
<translation>Veröffentlichte Festlegung: die CIE-Formel für Tageslicht bei 6504 K mit den Komponenten von D. B. Judd, D. L. MacAdam, G. Wyszecki (1964), J. Opt. Soc. Am. 54, 1031-1040 (CIE 015:2018).</translation>
</message>
<message>
<source>Average daylight with sky. Published for sun and sky together: 54 lx per µmol m⁻² s⁻¹.</source>
<translation>Mittleres Tageslicht mit Himmel. Für Sonne und Himmel zusammen veröffentlicht: 54 lx je µmol m⁻² s⁻¹.</translation>
</message>
<message>
<source>Equal energy (CIE illuminant E)</source>
<translation>Gleiche Energie (CIE-Lichtart E)</translation>
</message>
<message>
<source>By definition: the same power in every nanometre.</source>
<translation>Nach Festlegung: dieselbe Leistung in jedem Nanometer.</translation>
</message>
<message>
<source>No lamp: a yardstick for checking.</source>
<translation>Keine Lampe: ein Maßstab zum Prüfen.</translation>
</message>
<message>
<source>Herbs in an L-shaped closet</source>
<translation>Kräuter in einem L-förmigen Wandschrank</translation>
</message>
<message>
<source>An invented example: no such closet was built or measured. A closet of 120 x 90 cm goes about a chimney; a shelf hangs in its narrow arm, and four bars follow the shape.</source>
<translation>Ein erfundenes Beispiel: kein solcher Schrank wurde gebaut oder gemessen. Ein Wandschrank von 120 x 90 cm geht um einen Kamin; in seinem schmalen Arm hängt ein Regalbrett, und vier Leisten folgen der Form.</translation>
</message>
<message>
<source>Front bar</source>
<translation>Vordere Leiste</translation>
</message>
<message>
<source>Second bar</source>
<translation>Zweite Leiste</translation>
</message>
<message>
<source>Left bar</source>
<translation>Linke Leiste</translation>
</message>
<message>
<source>Middle bar</source>
<translation>Mittlere Leiste</translation>
</message>
<message>
<source>Shelf</source>
<translation>Regalbrett</translation>
</message>
<message>
<source>Basil, seedlings</source>
<translation>Basilikum, Jungpflanzen</translation>
</message>
<message>
<source>The hallway cabinet, decided and measured</source>
<translation>Der Flurschrank, entschieden und gemessen</translation>
</message>
<message>
<source>An invented example: no such cabinet was built, and its readings are made up. The demo cabinet with what was weighed against it (kept as options) and a survey of the finished space.</source>
<translation>Ein erfundenes Beispiel: kein solcher Schrank wurde gebaut, und seine Messwerte sind ausgedacht. Der Schrank mit dem, wogegen er abgewogen wurde (als Varianten behalten), und einer Messung des fertigen Raums.</translation>
</message>
<message>
<source>Back bar</source>
<translation>Hintere Leiste</translation>
</message>
<message>
<source>Lettuce, seedlings</source>
<translation>Salat, Jungpflanzen</translation>
</message>
<message>
<source>Invented readings, door shut</source>
<translation>Erfundene Messwerte, Tür zu</translation>
</message>
<message>
<source>Quantum sensor</source>
<translation>Quantensensor</translation>
</message>
<message>
<source>Made up: the estimate less 7 %, scattered by 1.5 %.</source>
<translation>Ausgedacht: die Schätzung weniger 7 %, gestreut um 1,5 %.</translation>
</message>
<message>
<source>White film on all walls</source>
<translation>Weiße Folie an allen Wänden</translation>
</message>
<message>
<source>White film, bars at 24 cm</source>
<translation>Weiße Folie, Leisten auf 24 cm</translation>
</message>
<message>
<source>Creased foil on all walls</source>
<translation>Geknitterte Alufolie an allen Wänden</translation>
</message>
<message>
<source>Herbs and lettuce seedlings in a hallway cabinet</source>
<translation>Kräuter und Salat-Jungpflanzen in einem Flurschrank</translation>
</message>
<message>
<source>An invented example: no such cabinet was built or measured. A hallway cabinet with one corner cut off holds trays of herb and lettuce seedlings under two LED bars. Three walls are white board, the back wall carries foil up to 70 cm, the door in front is painted white.</source>
<translation>Ein erfundenes Beispiel: kein solcher Schrank wurde gebaut oder gemessen. Ein Flurschrank mit einer abgeschnittenen Ecke trägt Schalen mit Kräutern und Salat-Jungpflanzen unter zwei LED-Leisten. Drei Wände sind weiße Platte, die Rückwand trägt bis 70 cm Alufolie, die Tür vorn ist weiß gestrichen.</translation>
</message>
<message>
<source>Rack of three tiers, 90 x 40 cm</source>
<translation>Gestell mit drei Etagen, 90 x 40 cm</translation>
</message>
<message>
<source>An invented example: no such rack was built or measured. Three tiers before a white wall, open at the front and at both sides: the lowest is the plan's canopy, the two above are shelves whose tops carry one. Each tier has two strip lights under the shelf above it; what spills over the edges reaches the tiers below. Board, tray and plants of a tier are taken as one box.</source>
<translation>Ein erfundenes Beispiel: Ein solches Gestell wurde weder gebaut noch gemessen. Drei Etagen vor einer weißen Wand, vorn und an beiden Seiten offen: Die unterste ist das Blätterdach des Plans, die beiden oberen sind Bretter, deren Oberseiten eines tragen. Jede Etage hat zwei Lichtleisten unter dem Brett über ihr; was über die Kanten fällt, erreicht die Etagen darunter. Brett, Schale und Pflanzen einer Etage gelten als ein Kasten.</translation>
</message>
<message>
<source>Front bar, lowest tier</source>
<translation>Vordere Leiste, unterste Etage</translation>
</message>
<message>
<source>Back bar, lowest tier</source>
<translation>Hintere Leiste, unterste Etage</translation>
</message>
<message>
<source>Front bar, middle tier</source>
<translation>Vordere Leiste, mittlere Etage</translation>
</message>
<message>
<source>Back bar, middle tier</source>
<translation>Hintere Leiste, mittlere Etage</translation>
</message>
<message>
<source>Front bar, upper tier</source>
<translation>Vordere Leiste, obere Etage</translation>
</message>
<message>
<source>Back bar, upper tier</source>
<translation>Hintere Leiste, obere Etage</translation>
</message>
<message>
<source>Middle tier</source>
<translation>Mittlere Etage</translation>
</message>
<message>
<source>Upper tier</source>
<translation>Obere Etage</translation>
</message>
<message>
<source>Seedlings on a shelf of 90 x 35 cm</source>
<translation>Jungpflanzen auf einem Regal von 90 x 35 cm</translation>
</message>
<message>
<source>An invented example: no such shelf was built or measured. One level of a shelf before a white wall, open at the front and at both sides, under two strip lights.</source>
<translation>Ein erfundenes Beispiel: kein solches Regal wurde gebaut oder gemessen. Ein Fach eines Regals vor einer weißen Wand, vorn und an beiden Seiten offen, unter zwei Lichtleisten.</translation>
</message>
<message>
<source>Seedlings, before transplanting</source>
<translation>Jungpflanzen, vor dem Umpflanzen</translation>
</message>
<message>
<source>Lettuce in a tent of 60 x 60 x 160 cm</source>
<translation>Salat in einem Zelt von 60 x 60 x 160 cm</translation>
</message>
<message>
<source>An invented example: no such tent was built or measured. Walls and ceiling are of film, the floor is a white tray, and one board of 100 W hangs on ratchets.</source>
<translation>Ein erfundenes Beispiel: kein solches Zelt wurde gebaut oder gemessen. Wände und Decke sind aus Folie, der Boden ist eine weiße Schale, und eine Platte mit 100 W hängt an Ratschen.</translation>
</message>
<message>
<source>Lettuce, leaf and head</source>
<translation>Salat, Blatt und Kopf</translation>
</message>
<message>
<source>Trays of two heights in a tent of 60 x 60 cm</source>
<translation>Schalen in zwei Höhen in einem Zelt von 60 x 60 cm</translation>
</message>
<message>
<source>An invented example: no such tent was built or measured. Trays of seedlings stand on pots, 5 and 12 cm over the canopy of the plants beside them; the nearer leaves are to the lamp, the more light they get.</source>
<translation>Ein erfundenes Beispiel: Ein solches Zelt wurde weder gebaut noch gemessen. Schalen mit Sämlingen stehen auf Töpfen, 5 und 12 cm über dem Blätterdach der Pflanzen daneben; je näher Blätter der Lampe sind, desto mehr Licht bekommen sie.</translation>
</message>
<message>
<source>Tray, 5 cm up</source>
<translation>Schale, 5 cm höher</translation>
</message>
<message>
<source>Tray, 12 cm up</source>
<translation>Schale, 12 cm höher</translation>
</message>
</context>
</TS>
