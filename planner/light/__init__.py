"""How light moves: arrays in, arrays out; no plan, no files, no screen.

Reading order: ``prism`` (the room and its rays), ``surfaces`` (facets, patches, texels),
``emission`` (lamps), ``field`` (the map), ``paths`` (mirror chains), ``exchange`` and
``gather`` (diffuse light), ``direct``, ``images`` and ``photons`` (lamp light), ``solve``.
Photon flux is in µmol s⁻¹ and flux density in µmol m⁻² s⁻¹, but everything is linear:
any unit of flux goes in and the same comes out.
"""
