"""How light moves: arrays in, arrays out; no plan, no files, no screen.

Reading order: ``prism`` and ``boxes`` (the room and its rays), ``surfaces`` (facets, patches,
texels) with ``narrow`` (gaps) and ``rows``, ``emission`` (lamps), ``field`` (the map),
``paths`` and ``lobes`` (mirror chains, flat and wrinkled), ``exchange`` (diffuse light),
``direct``, ``close_up``, ``photons``, ``chains``, ``images`` and ``windows`` (lamp light),
``glints`` and ``foot`` (what wrinkled mirrors send to the map), ``bright`` (small spots on walls).
Photon flux is in µmol s⁻¹ and flux density in µmol m⁻² s⁻¹, but everything is linear:
any unit of flux goes in and the same comes out.
"""
